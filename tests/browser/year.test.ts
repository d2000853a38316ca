import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test.each([
  [1280, false],
  [390, true],
])("the year ahead is reached from the slate and reads at %i px, dark: %s", async (width, dark) => {
  const { page, complaints } = await openPage(demo.browser, { width, dark });
  await page.goto(`${demo.url}/slate/2026-03`);
  await page.getByRole("link", { name: "Year", exact: true }).click();
  await page.getByRole("heading", { name: "The year ahead", level: 1 }).waitFor();
  const april = page.getByRole("region", { name: "April 2026" });
  await april.getByText("Easter Monday is on Mon 6 April").waitFor();
  expect(await page.getByText(/^To come:/).count()).toBeGreaterThan(30);
  expect(await axeFindings(page)).toEqual([]);
  expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBe(0);
  await page.getByRole("link", { name: "Propose June 2026" }).click();
  await page.waitForURL(/propose\/2026-06$/);
  expect(complaints).toEqual([]);
  await page.context().close();
});
