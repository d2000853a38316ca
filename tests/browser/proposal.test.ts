import { expect, test } from "vitest";
import { axeFindings } from "#tests/support/axe.ts";
import { openPage } from "#tests/support/browser.ts";
import { withDemo } from "#tests/support/demo.ts";

const demo = withDemo();

test("a month is proposed, a food swapped, the plan bettered to a proven gap, and undone", async () => {
  const { page, complaints } = await openPage(demo.browser);
  await page.goto(`${demo.url}/slate/propose/2026-05`);
  await page.getByRole("button", { name: "Propose", exact: true }).click();
  await page.getByRole("button", { name: "Take it" }).waitFor();
  // It looks for better by itself, and can be stopped.
  await page.getByText(/no plan with these themes can be/).waitFor();
  const stop = page.getByRole("button", { name: "Stop here" });
  if (await stop.isVisible()) await stop.click();
  await page.getByRole("button", { name: "Undo the last step" }).waitFor();
  const week = page.getByRole("region", { name: /, 4–8 May$/ });
  const food = week.getByRole("listitem").first().getByRole("link");
  const before = await food.textContent();
  await food.click();
  const picked = page.getByRole("region", { name: `${before}, Mon 4 May` });
  await picked.getByText("Chosen for:").waitFor();
  await picked.getByRole("listitem").first().getByRole("button").click();
  await picked.waitFor({ state: "detached" });
  expect(await food.textContent()).not.toBe(before);

  await page.getByRole("button", { name: "Undo the last step" }).click();
  await food.filter({ hasText: before ?? "" }).waitFor();

  await page.getByRole("button", { name: "Look for better, half a minute" }).click();
  await page.getByRole("button", { name: "Stop here" }).waitFor();
  await page.getByRole("button", { name: "Keep this one beside, to compare" }).click();
  await page.getByRole("heading", { name: "Side by side" }).waitFor();
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 900 });
    expect(await axeFindings(page)).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth - innerWidth")).toBe(0);
  }
  expect(complaints).toEqual([]);
  await page.context().close();
});

test("without script a month is proposed, seen and taken", async () => {
  const context = await demo.browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(`${demo.url}/slate/propose/2026-06`);
  await page.getByRole("button", { name: "Propose", exact: true }).click();
  await page.getByRole("button", { name: "Take it" }).click();
  await page.waitForURL(/slate\/2026-06$/);
  expect(await page.getByRole("img", { name: /^Tray: .+ %, .+ %/ }).count()).toBeGreaterThan(14);
  await context.close();
});
