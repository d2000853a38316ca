import { expect, test } from "vitest";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("a lunch is dragged to another day, a week onto another week, and both are taken back", async () => {
  const { page, complaints } = await openPage(demo.browser);
  // All of the month in sight: nothing scrolls away under the pointer.
  await page.setViewportSize({ width: 1280, height: 1700 });
  await page.goto(`${demo.url}/slate/2026-03`);
  const week = page.getByRole("region", { name: /^Nest Watch/ });
  const trays = week.getByRole("img", { name: /^Tray/ });
  const [tuesday, thursday] = [
    await trays.nth(1).getAttribute("aria-label"),
    await trays.nth(3).getAttribute("aria-label"),
  ];
  await trays.nth(1).dragTo(trays.nth(3));
  await page.getByRole("button", { name: "Undo: Tue 17 and Thu 19 changed places" }).waitFor();
  expect(await trays.nth(3).getAttribute("aria-label")).toBe(tuesday);
  expect(await trays.nth(1).getAttribute("aria-label")).toBe(thursday);

  const last = page.getByRole("heading", { name: "Rabbit Garden" });
  await page.getByRole("heading", { name: "Nest Watch" }).dragTo(last);
  await page.getByRole("region", { name: "Nest Watch, 23–27 March" }).waitFor();
  await page.getByRole("button", { name: "Undo: episode 41 moved" }).click();
  await page.getByRole("region", { name: "Nest Watch, 16–20 March" }).waitFor();
  await page.getByRole("button", { name: "Undo: Tue 17 and Thu 19 changed places" }).click();
  await page.getByRole("button", { name: /changed places/ }).waitFor({ state: "detached" });
  expect(await trays.nth(1).getAttribute("aria-label")).toBe(tuesday);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("by keyboard, the page of the week lets two lunches change places", async () => {
  const { page, complaints } = await openPage(demo.browser, { width: 390 });
  await page.goto(`${demo.url}/slate/week/2026-03-16`);
  const day = page.getByRole("region", { name: /^Tuesday 17/ });
  await day.getByText("Another day", { exact: true }).focus();
  await page.keyboard.press("Enter");
  await day.getByRole("button", { name: "Change places" }).press("Enter");
  await day.getByText("Choose a day first.").waitFor();
  await day.getByLabel("Change places with").selectOption({ label: "Wed 25: Ears up" });
  await day.getByRole("button", { name: "Change places" }).press("Enter");
  await page.getByRole("button", { name: "Undo: Tue 17 and Wed 25 changed places" }).waitFor();
  expect(await day.getByLabel("Angle").inputValue()).toBe("Ears up");
  expect(complaints).toEqual([]);
  await page.context().close();
});
