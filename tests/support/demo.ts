import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { openBrowser, openPage } from "./browser.ts";
import { startServer, type RunningServer } from "./server.ts";

/** A server with the demo and a browser, open from before the first test of a file until after its last. */
export type Demo = {
  readonly url: string;
  readonly browser: Browser;
};

/** Opens the demo on a day through its door on the welcome page, for all tests of the file it is called in. */
export function withDemo(today = "2026-03-11"): Demo {
  let opened: { readonly server: RunningServer; readonly browser: Browser } | undefined;
  beforeAll(async () => {
    const [server, browser] = [await startServer(today), await openBrowser()];
    opened = { server, browser };
    const { page } = await openPage(browser);
    await page.goto(`${server.url}/welcome`);
    await page.getByRole("button", { name: "Open the demo" }).click();
    await page.waitForURL(/\/slate/);
    await page.context().close();
  });
  afterAll(async () => {
    await opened?.browser.close();
    opened?.server.stop();
  });
  const now = () => {
    if (!opened) throw new Error("The demo opens before the first test, not sooner.");
    return opened;
  };
  return {
    get url() {
      return now().server.url;
    },
    get browser() {
      return now().browser;
    },
  };
}
