import { afterAll, beforeAll, expect, test } from "vitest";
import type { Browser } from "playwright-core";
import { axeFindings } from "#tests/support/axe.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

let server: RunningServer;
let browser: Browser;

beforeAll(async () => {
  server = await startServer("2026-03-11");
  browser = await openBrowser();
  const { page } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByRole("button", { name: /demo/i }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  await page.context().close();
});
afterAll(async () => {
  await browser.close();
  server.stop();
});

test("from the ledger to a child and a food, with charts that are read out and have tables", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(`${server.url}/slate`);
  await page.getByRole("link", { name: "Ledger", exact: true }).click();
  await page.getByRole("heading", { name: "What the records say" }).waitFor();
  await page.getByRole("img", { name: /^Eaten share, week by week\. .*Biscuit/ }).waitFor();
  const tricks = page.getByRole("figure").filter({ hasText: "Which tricks help" });
  await tricks.getByText("This is an association only").waitFor();
  await tricks.getByText("The figures as a table").click();
  await tricks.getByRole("columnheader", { name: "95 % interval" }).waitFor();

  await page.getByRole("link", { name: "13 weeks" }).click();
  await page.locator('[aria-current="page"]', { hasText: "13 weeks" }).waitFor();
  await page.getByRole("link", { name: "All foods of Pepper" }).click();
  await page.getByRole("heading", { name: "Pepper and the foods" }).waitFor();
  const resting = page.getByRole("region", { name: /^Resting, \d+ foods?$/ });
  await resting
    .getByText(/^resting until/)
    .first()
    .waitFor();
  await resting.getByRole("link").first().click();
  await page.getByRole("img", { name: /^Pepper and .*\d+ offers?, \d+ tastings?;/ }).waitFor();
  expect(complaints).toEqual([]);
  expect(await page.content()).not.toMatch(/Ines|Tomas/);
  await page.context().close();
});

test.each(
  ["/ledger", "/ledger/used", "/ledger/child/pepper", "/ledger/food/carrot-sticks"].flatMap(
    (address) =>
      [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(browser, { width, dark });
    expect((await page.goto(server.url + address))?.status()).toBe(200);
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test.each(["/ledger/child/nobody", "/ledger/food/nothing"])(
  "%s leads to no record and says so with 404",
  async (address) => {
    expect((await fetch(server.url + address)).status).toBe(404);
  },
);
