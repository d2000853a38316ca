import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

const checksOf = (page: Page, day: string) =>
  page.getByRole("region", { name: day }).getByRole("region", { name: "Checks" });

test("a broken rule is seen on the month, named on the week, kept with a note and taken up again", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/slate/2026-03`);
  await page.getByText("almonds: school rule").waitFor();

  await page.goto(`${demo.url}/slate/week/2026-03-16`);
  const checks = checksOf(page, "Tuesday 17 March 2026");
  await checks.getByText(/do(es)? not fit “The school keeps a nut-free table”/).waitFor();
  await checks.getByText("Source", { exact: true }).first().click();
  await checks.getByText(/The school’s rule as you wrote it down/).waitFor();
  await checks.getByText("I know, keep it").click();
  await checks.getByRole("button", { name: "Keep it" }).click();
  await checks.getByText("Say in a few words why it may stay.").waitFor();
  await checks.getByLabel("Why it may stay").fill("the table is for others that day");
  await checks.getByRole("button", { name: "Keep it" }).click();
  await checks.getByText("1 kept").click();
  await checks.getByText("Kept: “the table is for others that day”").waitFor();
  await page.goto(`${demo.url}/slate/2026-03`);
  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  expect(await page.getByText("almonds: school rule").count()).toBe(0);

  await page.goto(`${demo.url}/slate/week/2026-03-16`);
  await checks.getByText("1 kept").click();
  await checks.getByRole("button", { name: "Warn again" }).click();
  await checks.getByText("I know, keep it").waitFor();
  await page.goto(`${demo.url}/slate/2026-03`);
  await page.getByText("almonds: school rule").waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("how lunch travels decides what the temperature check says, on the week and on the call sheet", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/callsheet/2026-03-12`);
  const checks = page.getByRole("region", { name: "Checks" });
  await checks.getByRole("heading", { name: "Checks" }).waitFor();
  expect(await checks.getByText(/above 4.4 °C/).count()).toBe(0);

  await page.getByRole("link", { name: "What the checks assume" }).click();
  await page.getByLabel("Cold packs in it").fill("0");
  await page
    .getByRole("group", { name: /reading of the jar/ })
    .getByLabel("Second reading, °C")
    .fill("97");
  await page.getByRole("button", { name: "Save the checks" }).click();
  await page
    .getByText("The reading must lie between the start and the room’s temperature.")
    .waitFor();
  await page
    .getByRole("group", { name: /reading of the jar/ })
    .getByLabel("Second reading, °C")
    .fill("70");
  await page.getByRole("button", { name: "Save the checks" }).click();
  await page.waitForURL(/\/bible#checks$/);
  await page.getByText("0 of 250 g").waitFor();

  await page.goto(`${demo.url}/callsheet/2026-03-12`);
  await checks.getByText(/at 12:15, above 4.4 °C for about 4 h/).waitFor();
  await checks.getByText(/In the model, .*cold pack/).waitFor();
  await page.getByRole("complementary", { name: "Caution" }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
});

const PAGES = [
  "/bible/checks",
  "/slate/week/2026-03-16",
  "/callsheet/2026-03-13",
  "/callsheet/2026-03-17",
];

test.each(
  PAGES.flatMap((address) =>
    [390, 1280].flatMap((width) => [false, true].map((dark) => ({ address, width, dark }))),
  ),
)(
  "$address at $width px, dark $dark, all unfolded: no accessibility finding, nothing wider than the screen",
  async ({ address, width, dark }) => {
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    await page.goto(demo.url + address);
    await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
    expect(await axeFindings(page)).toEqual([]);
    const overflow = await page.evaluate("document.documentElement.scrollWidth - innerWidth");
    expect(overflow).toBeLessThanOrEqual(0);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
);

test("when all goes wrong, the lunch that stands ready steps in with a reason", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/callsheet/2026-03-12`);
  const planB = page.getByRole("region", { name: "Plan B" });
  await planB.getByText(/from what is at home, \d+ min/).waitFor();
  await planB.getByText("Pack this instead").click();
  await planB.getByRole("button", { name: "Let it step in" }).click();
  await planB.getByText("Say why in a few words: the description may need it.").waitFor();
  await planB.getByLabel("Why the planned lunch stays out").fill("The oven stayed cold");
  await planB.getByRole("button", { name: "Let it step in" }).click();
  await page
    .getByText(/stays out: The oven stayed cold/)
    .first()
    .waitFor();
  expect(await axeFindings(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await page.context().close();
});
