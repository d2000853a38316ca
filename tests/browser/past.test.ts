import { mkdirSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

const shots = path.resolve(import.meta.dirname, "../shots");
let server: RunningServer;
let browser: Browser;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startServer("2026-03-11");
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
  server.stop();
});

const FILE = [
  "Day;What was in;Kid;Ate;Said",
  '03.02.2026;cucumber slices;Biscuit;75%;"crunchy; cold"',
  "03.02.2026;humus;;;",
  "14.02.2026;zzyzx;Biscuit;all;",
].join("\r\n");

test("a table of earlier weeks is mapped, looked at, settled and brought in once", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByLabel("Series name").fill("Harbour Boxes");
  await page.getByRole("button", { name: "Add a child" }).click();
  await page.getByLabel("Private name").fill("Ines");
  await page.getByLabel("On-screen name").fill("Biscuit");
  await page.getByRole("button", { name: "Start the series" }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();

  await page.goto(`${server.url}/bible/past`);
  const buffer = Buffer.from(FILE);
  await page
    .getByLabel("The file")
    .setInputFiles({ name: "lunches.csv", mimeType: "text/csv", buffer });
  await page.getByText("Say which column holds the item.").waitFor();
  await page.getByLabel("Item (needed)").selectOption({ index: 2 });
  await page.getByRole("button", { name: "Look again" }).click();
  await page.getByText("No food of the Larder is “zzyzx”").waitFor();
  expect(await page.getByRole("button", { name: "Bring it in" }).isDisabled()).toBe(true);
  await page.getByLabel("zzyzx is").selectOption({ label: "a new food of my own" });
  await page.getByRole("button", { name: "Look again" }).click();
  await page.getByText("2 weeks, 2 lunches, 3 items, 2 verdicts").waitFor();
  for (const [width, dark] of [
    [1280, false],
    [390, true],
  ] as const) {
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({
      colorScheme: dark ? "dark" : "light",
      reducedMotion: "reduce",
    });
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    await page.screenshot({ path: path.join(shots, `past-${width}.png`), fullPage: true });
  }
  await page.getByRole("button", { name: "Bring it in" }).click();
  await page.getByText("It is on record.").waitFor();
  await page.getByRole("button", { name: "Look again" }).click();
  await page.getByText("0 weeks, 0 lunches, 0 items, 0 verdicts").waitFor();

  const table = await (await fetch(`${server.url}/bible/past/lunches`)).text();
  expect(table).toContain(",crunchy; cold");
  expect(table).not.toContain("Ines");
  const whole = await (await fetch(`${server.url}/bible/past/whole`)).text();
  await page.getByRole("button", { name: "Put it here" }).click();
  await page.getByText("Say that it may take the place").waitFor();
  await page.getByLabel("A file from").setInputFiles({
    ...{ name: "series.json", mimeType: "application/json" },
    buffer: Buffer.from(whole.replace("Harbour Boxes", "Harbour Tins")),
  });
  await page.getByLabel("It may take the place").check();
  await page.getByRole("button", { name: "Put it here" }).click();
  await page.getByText("It stands here now.").waitFor();
  await page.goto(`${server.url}/bible`);
  await page.getByText("Harbour Tins").waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});
