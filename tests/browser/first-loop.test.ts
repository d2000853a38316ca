import { mkdirSync } from "node:fs";
import { request } from "node:http";
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

test("a series is started, a week pencilled, composed and locked, by names and labels alone", async () => {
  const { page, complaints } = await openPage(browser);
  await page.goto(server.url);
  await page.getByRole("heading", { name: "Welcome to Noonbook" }).waitFor();

  await page.getByRole("button", { name: "Start the series" }).click();
  await page.getByText("Give the series a name.").waitFor();
  await page.getByLabel("Series name").fill("Harbour Boxes");
  await page.getByRole("button", { name: "Add a child" }).click();
  await page.getByLabel("Private name").fill("Ines");
  await page.getByLabel("On-screen name").fill("Ines");
  await page.getByRole("button", { name: "Start the series" }).click();
  await page.getByText("the private name never leaves the house").waitFor();
  await page.getByLabel("On-screen name").fill("Biscuit");
  await page.getByRole("button", { name: "Start the series" }).click();

  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  await page.getByRole("link", { name: "April" }).click();
  await page.getByRole("heading", { name: "April 2026" }).waitFor();
  await page.getByRole("link", { name: "Propose the rest" }).click();
  await page.getByRole("button", { name: "Propose", exact: true }).click();
  await page.getByRole("button", { name: "Take it" }).click();
  await page.getByRole("link", { name: "Propose the rest" }).waitFor();
  expect(await page.getByRole("img", { name: /^Tray: .+ %, .+ %, .+ %/ }).count()).toBe(25);
  await page.getByRole("link", { name: "March" }).click();
  const week = page.getByRole("region", { name: "9–13 March" });
  await week.getByLabel("or a working title").fill("Night Train");
  await week.getByRole("button", { name: "Pencil it in" }).click();

  await page.getByRole("heading", { name: "Night Train" }).waitFor();
  await page.getByRole("button", { name: "Lock the week" }).click();
  await page.getByText("The lunch of 2026-03-09 is still empty.").waitFor();
  for (const [name, foods] of DAYS) {
    const day = page.getByRole("region", { name });
    for (const food of foods) {
      await day.getByLabel("Add a food").fill(food);
      await day.getByRole("listitem").getByRole("button", { name: food }).first().click();
    }
    await day.getByRole("button", { name: "Save this lunch" }).click();
    await day.getByRole("img", { name: new RegExp(foods[0] ?? "", "i") }).waitFor();
  }
  await page.getByRole("button", { name: "Lock the week" }).click();
  await page.getByText("locked", { exact: true }).waitFor();

  await page.goto(`${server.url}/slate`);
  await page
    .getByRole("img", { name: /^Tray: hummus/i })
    .first()
    .waitFor();
  await page
    .getByText(/was last on Mon 9 March 2026/)
    .first()
    .waitFor();

  await page.goto(`${server.url}/callsheet/2026-03-11`);
  await page.getByRole("heading", { name: "Wednesday’s shoot" }).waitFor();
  await page.getByLabel("This stays out").selectOption({ label: "Apple slices" });
  await page.getByLabel("This steps in (optional)").fill("pear");
  await page.getByRole("button", { name: "Swap", exact: true }).click();
  await page.getByText("Say why in a few words").waitFor();
  await page.getByLabel("Why").fill("the apples were bruised");
  await page.getByRole("button", { name: "Swap", exact: true }).click();
  await page.getByText("(stepped in for apple slices)").waitFor();
  await page.getByLabel("Minutes it took (optional)").fill("24");
  await page.getByRole("button", { name: "Shut the lid: packed" }).click();
  await page.getByText("Kept.").waitFor();

  await page.goto(`${server.url}/verdicts/2026-03-11`);
  await page
    .getByRole("group", { name: "How much was eaten?" })
    .getByRole("button", { name: "¾" })
    .click();
  await page
    .getByRole("group", { name: "How was it, Biscuit?" })
    .getByRole("button", { name: "Good" })
    .click();
  await page.getByLabel("In Biscuit’s words (optional)").fill("The cheese was the coal");
  await page.getByLabel("In Biscuit’s words (optional)").blur();
  await page.getByText("Everything tapped is kept.").waitFor();
  await page.reload();
  await page.getByRole("img", { name: /cheddar cheese ¾ eaten/i }).waitFor();
  expect(await page.getByLabel("In Biscuit’s words (optional)").inputValue()).toBe(
    "The cheese was the coal",
  );
  expect(await page.content()).not.toContain("Ines");

  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.goto(`${server.url}/copydesk`);
  await page.getByRole("heading", { name: "Publishing pack" }).waitFor();
  await page.getByRole("link", { name: "Description" }).first().click();
  await page.getByRole("heading", { name: "Description" }).waitFor();
  await page.getByRole("button", { name: "Copy text of Description" }).click();
  await page.getByText("Copied.").waitFor();
  const copied = await page.evaluate<string>("navigator.clipboard.readText()");
  expect(copied).toContain("“The cheese was the coal”");
  expect(copied).toContain("pear");
  expect(copied).not.toContain("Ines");
  expect(complaints).toEqual([]);
  await page.context().close();
});

const DAYS: readonly (readonly [string, readonly string[]])[] = [
  ["Monday 9 March 2026", ["hummus", "cucumber", "clementine"]],
  ["Tuesday 10 March 2026", ["hummus", "carrot sticks"]],
  ["Wednesday 11 March 2026", ["cheddar", "apple slices"]],
  ["Thursday 12 March 2026", ["hard-boiled egg", "banana"]],
  ["Friday 13 March 2026", ["rice", "green peas"]],
];

const PAGES = [
  "/welcome",
  "/bible",
  "/bible/phones",
  "/slate/2026-03",
  "/slate/2026-04",
  "/slate/propose/2026-05",
  "/slate/week/2026-03-09",
  "/errands/2026-03-09",
  "/callsheet/2026-03-11",
  "/callsheet/2026-03-14",
  "/mise/2026-03-11",
  "/mise/2026-03-14",
  "/verdicts/2026-03-11",
  "/verdicts/2026-03-14",
  "/larder",
  "/ledger",
  "/copydesk/2026-03-09",
  "/copydesk/2026-03-09/description",
  "/larder/cucumber-slices",
  "/larder/new",
  "/larder/find?q=cucumber",
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
    const name = `${address.slice(1).replaceAll("/", "-")}-${width}${dark ? "-dark" : ""}.png`;
    await page.screenshot({ path: path.join(shots, name), fullPage: true });
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test.each([
  "/slate/2026-13",
  "/slate/not-a-month",
  "/slate/week/2026-03-10",
  "/slate/week/2031-01-06",
])("%s leads to no record and says so with 404", async (address) => {
  const response = await fetch(server.url + address);
  expect(response.status).toBe(404);
  expect(await response.text()).toContain("Nothing is kept here");
});

// RFC 9110 §15.5.20: a server that is asked under a name it does not answer for.
test.each([
  ["a name pointed here from elsewhere", { host: "elsewhere.example" }, 421],
  ["a page elsewhere", { origin: "http://elsewhere.example" }, 421],
  ["a page that hides where it is", { origin: "null" }, 421],
  ["an own page", {}, 200],
])("%s: %o is answered with %i", async (_from, headers, status) => {
  const answered = await new Promise<number | undefined>((resolve, reject) => {
    const asked = request(`${server.url}/welcome`, { headers }, (answer) => {
      answer.resume();
      resolve(answer.statusCode);
    });
    asked.on("error", reject);
    asked.end();
  });
  expect(answered).toBe(status);
});
