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

test("a series is started with its household, and the bible changes all of it", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByLabel("Series name").fill("Harbour Boxes");
  await page.getByRole("button", { name: "Add a child" }).click();
  await page.getByLabel("Private name").fill("Ines");
  await page.getByLabel("On-screen name").fill("Biscuit");
  await page.getByRole("group", { name: "Allergies (optional)" }).getByLabel("Sesame").check();
  await page.getByLabel("No fizzy drinks").check();
  await page.getByRole("button", { name: "Add a shop" }).click();
  await page.getByLabel("Shop name").fill("Quayside Greens");
  await page.getByRole("button", { name: "Start the series" }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();

  await page.goto(`${server.url}/bible`);
  await page.getByText("Allergy: sesame").waitFor();
  await page.getByRole("link", { name: "No fizzy drinks" }).waitFor();
  await page.getByRole("link", { name: "Biscuit" }).click();
  await page.getByLabel("On-screen name").fill("Little Ines");
  await page.getByRole("button", { name: "Add an allergen" }).click();
  await page.getByRole("button", { name: "Save this child" }).click();
  await page.getByText("the private name never leaves the house").waitFor();
  await page.getByText("Choose what.").waitFor();
  expect(await page.getByLabel("On-screen name").inputValue()).toBe("Little Ines");
  await page.getByLabel("On-screen name").fill("Biscuit");
  await page.getByLabel("Allergen").last().selectOption({ label: "Coconut" });
  await page.getByLabel("How serious").last().selectOption({ label: "Severe allergy" });
  await page.getByLabel("Add a food").fill("cucumber");
  await page
    .getByRole("list", { name: "Foods found" })
    .getByRole("button", { name: /^cucumber/i })
    .first()
    .click();
  await page.getByRole("button", { name: "Take out avoidance 3" }).waitFor();
  await page.getByRole("button", { name: "Save this child" }).click();
  await page.getByText("Severe allergy: coconut").waitFor();
  await page.getByText("Avoid: cucumber").waitFor();
  expect(await page.getByRole("main").textContent()).not.toContain("Ines");

  await page.getByRole("link", { name: "Add a rule" }).click();
  await page.getByRole("link", { name: "No glass in the bag" }).click();
  await page.getByLabel("In glass").waitFor();
  await page.getByLabel("The rule, as the school says it").fill("No jars on field days");
  await page.getByLabel("Wed").check();
  await page.getByRole("button", { name: "Save this rule" }).click();
  await page.getByText("keeps out in glass; Wed").waitFor();

  await page.getByRole("link", { name: "Change the days" }).click();
  await page.getByRole("button", { name: "Add days off" }).click();
  await page.getByRole("button", { name: "Save the days" }).click();
  await page.getByText("Say what it is, such as Winter break.").waitFor();
  await page.getByLabel("What", { exact: true }).fill("Boat blessing");
  await page.getByLabel("First day").fill("2026-03-18");
  await page.getByRole("button", { name: "Save the days" }).click();
  await page.getByText("Wed 18 March: Boat blessing").waitFor();

  await page.getByRole("button", { name: "Retire Quayside Greens" }).click();
  await page.getByRole("button", { name: "Bring back Quayside Greens" }).click();
  await page.getByRole("button", { name: "Retire Quayside Greens" }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("the second of two tabs is told, and keeps what was typed", async () => {
  const { page: first, complaints } = await openPage(browser);
  const second = await first.context().newPage();
  await first.goto(`${server.url}/bible/public`);
  await second.goto(`${server.url}/bible/public`);
  await first.getByLabel("Words that never leave").fill("Quay Lane");
  await first.getByRole("button", { name: "Save what may leave" }).click();
  await first.getByRole("heading", { name: "Series bible" }).waitFor();
  await second.getByLabel("Words that never leave").fill("Lamp Street");
  await second.getByRole("button", { name: "Save what may leave" }).click();
  await second.getByText("Another tab saved this sheet").waitFor();
  expect(await second.getByLabel("Words that never leave").inputValue()).toBe("Lamp Street");
  expect(complaints).toEqual([]);
  await first.context().close();
});

const PAGES = [
  "/bible",
  "/bible/children/new",
  "/bible/rules/new?start=nuts",
  "/bible/shops/new",
  "/bible/series",
  "/bible/days",
  "/bible/limits",
  "/bible/public",
  "/bible/past",
  "/slate/themes",
  "/slate/themes/new",
] as const;

test.each(
  PAGES.flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(browser, { width, dark });
    const response = await page.goto(server.url + address);
    expect(response?.status()).toBe(200);
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    const name = `${address.slice(1).replaceAll(/[/?=]/g, "-")}-${width}${dark ? "-dark" : ""}.png`;
    await page.screenshot({ path: path.join(shots, name), fullPage: true });
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test.each(["children", "rules", "shops"])("an unknown row of the %s is a 404", async (sheet) => {
  expect((await fetch(`${server.url}/bible/${sheet}/nobody`)).status).toBe(404);
});
