import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("a food is found as one types, edited with errors beside the fields, and comes back by its nickname", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/larder`);
  await page.getByLabel("Find a food, product, shop or trick").fill("cucumbr slices");
  await page.getByRole("link", { name: "Cucumber slices" }).click();
  await page.getByRole("heading", { name: "Cucumber slices", level: 1 }).waitFor();
  await page.getByLabel("Name", { exact: true }).fill("");
  await page.getByRole("button", { name: "Save this food" }).click();
  await page.getByText("Give the food a name.").waitFor();
  await page.getByLabel("Name", { exact: true }).fill("cucumber slices");
  await page.getByLabel("Other names").fill("harbour coins");
  await page.getByRole("button", { name: "Save this food" }).click();
  await page.getByText("Saved.").waitFor();
  await page.goto(`${demo.url}/larder?q=harbour+coins`);
  await page.getByRole("link", { name: "Cucumber slices" }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("the field at the top answers by keystroke on any page, and Enter leads to every time it was on", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/verdicts`);
  await page.locator("summary", { hasText: "Find" }).click();
  const field = page.getByLabel("Has it ever been on?");
  await field.pressSequentially("crispbr");
  await page
    .getByRole("link", { name: /crispbread.*times, last on/i })
    .first()
    .waitFor();
  await field.press("Enter");
  await page.getByRole("heading", { name: "Has it ever been on?" }).waitFor();
  await page.getByText(/Biscuit ate \d+ % of it on the whole/).waitFor();
  expect(await page.content()).not.toMatch(/Ines|Tomas/);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a food’s steps are added and saved, and its family’s rest", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/larder/asparagus`);
  await page.getByRole("button", { name: "Add a step" }).click();
  await page.getByRole("button", { name: "Save the steps" }).click();
  await page.getByText("Say what is done, or take the step out.").waitFor();
  const step = page.getByRole("group", { name: /^Step \d+$/ }).last();
  await step.getByLabel("What is done").fill("Lay out on a towel");
  await step.getByLabel("Minutes", { exact: true }).fill("3");
  await page.getByRole("button", { name: "Save the steps" }).click();
  await page.getByText("Saved.").waitFor();
  await page.getByLabel("Rest of the whole family, days").fill("x");
  await page.getByRole("button", { name: "Save the family" }).click();
  await page.getByText("Write a whole number from 0 to 366.").waitFor();
  await page.getByLabel("Rest of the whole family, days").fill("12");
  await page.getByRole("button", { name: "Save the family" }).click();
  await page.getByText("Saved.").nth(1).waitFor();
  await page.reload();
  // Fields are filled once the page's script has run.
  await expect.poll(() => step.getByLabel("What is done").inputValue()).toBe("Lay out on a towel");
  const rest = page.getByLabel("Rest of the whole family, days");
  await expect.poll(() => rest.inputValue()).toBe("12");
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a new food’s name and label are read for allergens, ticked when asked", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/larder/new`);
  await page.getByLabel("Name", { exact: true }).fill("Tahini twist");
  await page.getByText("The words speak of sesame (“tahini”).").waitFor();
  await page
    .getByLabel("Ingredients, as the label prints them")
    .fill("Spelt flour, butter. May contain nuts.");
  await page.getByRole("button", { name: "Tick these" }).click();
  const holds = page.getByRole("group", { name: "Allergens it holds" });
  for (const name of ["sesame", "milk", "wheat"]) {
    expect(await holds.getByLabel(name).isChecked()).toBe(true);
  }
  const some = page.getByRole("group", { name: "In some makes: check the label" });
  expect(await some.getByLabel("tree nut").isChecked()).toBe(true);
  expect(await page.getByRole("button", { name: "Tick these" }).count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a whole lunch is typed in one line, corrected once, and known the next time", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/slate/week/2026-03-16`);
  const day = page.getByRole("region", { name: "Tuesday 17 March 2026" });
  const line = day.getByLabel("The whole lunch in one line");
  await line.fill("¼ cup hummus + pebble bread");
  await day.getByRole("button", { name: "Read it" }).click();
  await day.getByRole("button", { name: "Another food for pebble bread" }).click();
  await day.getByLabel("What “pebble bread” means").fill("pita bread");
  await day
    .getByRole("listitem")
    .getByRole("button", { name: /pita bread/i })
    .first()
    .click();
  await day.getByRole("button", { name: "Put these in the lunch" }).click();
  await day.getByText("“pebble bread” means pita bread from now on.").waitFor();
  await day.getByRole("group", { name: "Hummus" }).waitFor();
  await line.fill("pebble bread");
  await line.press("Enter");
  await day.getByRole("button", { name: "Put these in the lunch" }).waitFor();
  expect(
    await day.getByLabel("Food for pebble bread").locator("option:checked").textContent(),
  ).toBe("pita bread");
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("a recall lists what holds the food, and a merge is taken back", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/larder/crispbread`);
  await page.getByRole("button", { name: "Mark as recalled" }).click();
  await page.getByText("Write what the notice says").waitFor();
  await page.getByLabel("What the notice says").fill("lot 7, maker’s notice");
  await page.getByRole("button", { name: "Mark as recalled" }).click();
  const recall = page.getByRole("region", { name: "Recall" });
  await recall.getByRole("link", { name: "Monday 23 March 2026" }).waitFor();
  await page.getByLabel("It is the same as").fill("rye bread");
  await page
    .getByRole("listitem")
    .getByRole("button", { name: /rye bread/i })
    .first()
    .click();
  await page.getByRole("button", { name: "Merge into rye bread" }).click();
  await page.getByRole("heading", { name: "Rye bread", level: 1 }).waitFor();
  await page.getByRole("button", { name: "Take back: crispbread merged into rye bread" }).click();
  await page.getByRole("button", { name: /^Take back/ }).waitFor({ state: "detached" });
  await page.goto(`${demo.url}/larder/crispbread`);
  await page.getByRole("heading", { name: "Crispbread", level: 1 }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

const PAGES = [
  "/larder",
  "/larder?show=all&standing=mixed",
  "/larder?q=no+such+thing+here",
  "/larder/crispbread",
  "/larder/new",
  "/larder/tricks?edit=star-cutter",
  "/larder/find?q=star",
  "/slate/week/2026-03-16",
];

test.each(
  PAGES.flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    await page.goto(demo.url + address);
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);
