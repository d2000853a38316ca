import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("from the ledger to a child and a food, with charts that are read out and have tables", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/slate`);
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
    const { page, complaints } = await openPage(demo.browser, { width, dark });
    expect((await page.goto(demo.url + address))?.status()).toBe(200);
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
    expect((await fetch(demo.url + address)).status).toBe(404);
  },
);
