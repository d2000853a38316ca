import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Browser, Page } from "playwright-core";
import { openGate, type Gate } from "#app/_start/gate.ts";
import { openDatabase, type Database } from "#lib/db/index.ts";
import { sendOut } from "#lib/use-cases/let-in.ts";
import { setPassphrase } from "#lib/use-cases/set-passphrase.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

const DAY = "/verdicts/2026-03-11";
/** A line is cut on purpose here: what the browser says of it is no fault of the page. */
const CUT = /ERR_INTERNET_DISCONNECTED|503/;
const PHRASE = "four lamps over the quay";

let server: RunningServer;
let browser: Browser;
let db: Database;
let gate: Gate;

beforeAll(async () => {
  const data = mkdtempSync(path.join(tmpdir(), "noonbook-browser-"));
  server = await startServer("2026-03-11", data);
  db = openDatabase(path.join(data, "noonbook.db"));
  await setPassphrase({ db }, { next: PHRASE });
  const behindPort = Number(new URL(server.url).port);
  gate = await openGate({ db, address: "127.0.0.1", port: 0, behindPort });
  browser = await openBrowser();
  const { page } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByRole("button", { name: /demo/i }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  await page.context().close();
});
afterAll(async () => {
  await browser.close();
  await gate.close();
  await db.$disconnect();
  server.stop();
});

/** Opens a day on a phone and waits until it also opens without a connection. */
async function keepDay(page: Page, origin: string): Promise<void> {
  await page.goto(origin + DAY);
  await page.getByText("This day also opens without a connection.").waitFor();
  expect(await keptPages(page)).toEqual([DAY]);
}

/** The pages that the phone keeps, read from its own store. */
function keptPages(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    if (!(await caches.has("verdict-pages"))) return [];
    const keys = await (await caches.open("verdict-pages")).keys();
    return keys.map(({ url }) => new URL(url).pathname);
  });
}

test.each([DAY, "/verdicts"])(
  "a device that was sent out keeps no verdict page once %s leads it to the door",
  async (address) => {
    const { page, complaints } = await openPage(browser, { width: 390 });
    await page.goto(gate.origin);
    await page.getByLabel("Passphrase").fill(PHRASE);
    await page.getByRole("button", { name: "Let this device in" }).click();
    await page.waitForURL(({ pathname }) => pathname !== "/let-in");
    await keepDay(page, gate.origin);
    await sendOut({ db }, {});
    await page.goto(gate.origin + address);
    await page.getByLabel("Passphrase").waitFor();
    await expect.poll(() => keptPages(page)).toEqual([]);
    // The line is cut: nothing of the household opens.
    await page.context().setOffline(true);
    await page.goto(gate.origin + DAY);
    await page.getByText("no day was opened on this phone before").waitFor();
    expect(complaints.filter((one) => !CUT.test(one))).toEqual([]);
    await page.context().close();
  },
);

test("a series started in the demo’s place leaves none of its pages on the phone", async () => {
  const { page, complaints } = await openPage(browser, { width: 390 });
  await keepDay(page, server.url);
  await page.goto(`${server.url}/welcome`);
  await page.getByLabel("Series name").fill("Our own tins");
  await page.getByRole("button", { name: "Start the series" }).click();
  await page.waitForURL(/\/slate/);
  await expect.poll(() => keptPages(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await page.context().close();
});
