import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage, printedPages, smallestPrint } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const WEEK = "/errands/2026-03-16";
const demo = withDemo("2026-03-14");

/** Buttons of a phone page that a thumb would miss: lower than 44 px. */
function lowButtons(page: Page): Promise<string[]> {
  return page
    .getByRole("article")
    .or(page.getByRole("main"))
    .first()
    .evaluate((part) =>
      [...part.querySelectorAll("button, summary")]
        .filter((button) => button.checkVisibility() && button.getBoundingClientRect().height < 44)
        .map((button) => button.textContent ?? ""),
    );
}

/** The boxes of the lines that are still open, by what they are called. */
function openBoxes(page: Page) {
  return page.getByRole("main").getByRole("checkbox", { checked: false });
}

test("a list is ticked by two people, also while one has no network, and both agree in the end", async () => {
  const { page: ours } = await openPage(demo.browser, { width: 390 });
  const { page: theirs, complaints } = await openPage(demo.browser, { width: 390 });
  await ours.goto(demo.url + WEEK);
  await theirs.goto(demo.url + WEEK);
  await ours.getByRole("heading", { name: "Next week’s errands" }).waitFor();
  const names = await openBoxes(ours).evaluateAll((boxes) =>
    boxes.map((box) => document.getElementById(`${box.id}-name`)?.textContent ?? ""),
  );
  expect(names.length).toBeGreaterThan(10);
  const [first = "", second = ""] = names;

  await ours.context().setOffline(true);
  await ours.getByRole("checkbox", { name: first, exact: true }).check();
  await ours.getByText("1 tick is kept here and waits for Noonbook.").waitFor();
  await theirs.getByRole("checkbox", { name: second, exact: true }).check();
  await ours.context().setOffline(false);
  await ours.getByText("waits for Noonbook").waitFor({ state: "hidden" });

  for (const page of [ours, theirs]) {
    // A tick may still be on its way: the page is asked again until it has arrived.
    const agreed = async (): Promise<number> => {
      await page.waitForLoadState("networkidle");
      await page.goto(demo.url + WEEK);
      return page.getByText(`${names.length - 2} open of ${names.length}`).count();
    };
    await expect.poll(agreed, { timeout: 30_000 }).toBe(1);
  }
  expect(complaints).toEqual([]);
  await ours.context().close();
  await theirs.context().close();
});

test("a price is kept as paid, a line is added, they had none of another, and the stock has what was bought", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(demo.url + WEEK);
  const run = page.getByRole("region", { name: /Saturday, Lamp Street Market/ });
  const line = run
    .getByRole("listitem")
    .filter({ has: page.getByRole("checkbox", { checked: false }) });
  const name = (await line.first().locator("label > span").first().textContent()) ?? "";
  await line
    .first()
    .getByText(/^More about/)
    .click();
  await line
    .first()
    .getByText(/ → 1 pack of | → 2 packs of /)
    .waitFor();
  const paid = line.first().getByLabel("Paid for all of it");
  await paid.fill("dear");
  await paid.press("Enter");
  await page.getByText("Write the price as a number, like 3.40.").waitFor();
  await paid.fill("3,40");
  await paid.press("Enter");
  await run.getByText("€3.40").waitFor();

  const other = line.filter({ hasNotText: name }).first();
  await other.getByText(/^More about/).click();
  await other.getByRole("button", { name: "They had none" }).click();
  await run.getByText("they had none", { exact: true }).waitFor();

  await run.getByText("Add a line, or change this run").click();
  await run.getByRole("button", { name: "Add to the list" }).click();
  await run.getByText("Write what to buy.").waitFor();
  await run.getByLabel("Also buy").fill("kitchen paper");
  await run.getByRole("button", { name: "Add to the list" }).click();
  await run.getByRole("checkbox", { name: "kitchen paper" }).waitFor();

  await page.getByRole("link", { name: "Stock", exact: true }).click();
  await page.getByRole("heading", { name: "What is in the house" }).waitFor();
  await page.getByText(name, { exact: false }).first().waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a food is always bought at one shop, until that is taken back", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/errands/2026-03-23`);
  const line = page.getByRole("main").getByRole("listitem").filter({ hasText: "pack of" }).last();
  await line.getByText(/^More about/).click();
  const only = line.getByRole("checkbox", { name: /^Always buy it at/ });
  const food = (await line.locator("label > span").first().textContent()) ?? "";
  await only.check();
  await page.getByRole("heading", { name: "The plan" }).waitFor();
  const decided = page.getByRole("listitem").filter({ hasText: / only at / });
  await decided.waitFor();
  await decided.getByRole("button", { name: /^Undo/ }).click();
  await decided.waitFor({ state: "hidden" });
  await page.getByText(food, { exact: true }).first().waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a swap after the lid moves stock, and is taken back", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/callsheet/2026-03-16`);
  await page.getByRole("button", { name: "Shut the lid: packed" }).click();
  await page.getByText("The lid is shut: what comes out is at home again").waitFor();
  await page.getByLabel("Why").fill("soggy");
  await page.getByRole("button", { name: "Swap", exact: true }).click();
  await page.getByText(/ stays out: soggy$/).waitFor();
  await page.getByRole("button", { name: /^Take it back/ }).click();
  await page.getByText(/ stays out: soggy$/).waitFor({ state: "hidden" });
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("stock is opened by keyboard, owed food is settled, a staple gets a level", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/errands/stock`);
  const beets = page.getByRole("complementary").getByRole("button", { name: /^Used.*beets/ });
  await beets.press("Enter");
  await beets.waitFor({ state: "hidden" });
  await page.getByText("Keep another staple").click();
  const form = page.getByRole("complementary");
  await form.getByRole("button", { name: "Keep this level" }).last().click();
  await page.getByText("Write the grams as a number.").first().waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test.each(
  [WEEK, "/errands/2026-03-23", "/errands/stock"].flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    await page.goto(demo.url + address);
    await page
      .getByText(/^More about|A part of it/)
      .first()
      .click();
    expect(await axeFindings(page)).toEqual([]);
    if (width === 390) expect(await lowButtons(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test("a week prints on one page of A4, a full one too, and nothing smaller than 8 pt", async () => {
  const { page } = await openPage(demo.browser);
  for (const week of [WEEK, "/errands/2026-03-23"]) {
    await page.goto(demo.url + week);
    await page.getByRole("heading", { name: "Will be left over" }).waitFor();
    expect(await printedPages(page)).toBe(1);
    expect(await smallestPrint(page)).toBeGreaterThanOrEqual(8);
  }
  await page.context().close();
});

test("an address that is no week to shop for says so with 404", async () => {
  for (const week of ["2026-03-17", "next-week", "2031-01-06"]) {
    expect((await fetch(`${demo.url}/errands/${week}`)).status).toBe(404);
  }
});
