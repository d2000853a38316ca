import type { Browser } from "playwright-core";
import { openBrowser, openPage } from "./browser.ts";
import { startServer, type RunningServer } from "./server.ts";

export type RunningDemo = {
  readonly server: RunningServer;
  readonly browser: Browser;
  readonly close: () => Promise<void>;
};

/** A server on a day, with the demo opened through its door on the welcome page, and a browser. */
export async function openDemo(today = "2026-03-11"): Promise<RunningDemo> {
  const server = await startServer(today);
  const browser = await openBrowser();
  const { page } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByRole("button", { name: /Tin Harbour|demo/i }).click();
  await page.waitForURL(/\/slate/);
  await page.context().close();
  const close = async (): Promise<void> => {
    await browser.close();
    server.stop();
  };
  return { server, browser, close };
}
