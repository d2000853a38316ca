import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadErrands, type ErrandsView } from "#lib/use-cases/errands/load-errands.ts";
import { errandSeries, MONDAY, SATURDAY } from "#tests/support/errand-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const WEEK = [
  { on: "2026-03-16", foodId: "grapes", amount: 0.25, unit: "cup" },
  { on: "2026-03-17", foodId: "hummus", amount: 30, unit: "g" },
  { on: "2026-03-18", foodId: "cucumber-slices", amount: 50, unit: "g" },
  { on: "2026-03-19", foodId: "grapes", amount: 0.5, unit: "cup" },
];

async function errands(context: Context): Promise<ErrandsView> {
  const view = await loadErrands(context, MONDAY);
  if (!view) throw new Error("the week can be opened");
  return view;
}

function linesOf(view: ErrandsView) {
  return view.runs.flatMap((run) =>
    run.aisles.flatMap(({ lines }) =>
      lines.map((line) => ({ ...line, on: run.day, at: run.shopId })),
    ),
  );
}

async function changeLunch({ db }: Context, date: string, foodId: string, amount: number) {
  await db.lunchItem.update({ where: { id: `${date}-${foodId}` }, data: { amount } });
}

describe("the errands of a week", () => {
  test("say the quantities by shop and day with their arithmetic", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, WEEK);
    const lines = linesOf(await errands(context));
    // A cup of grapes is 150 g and 96 % of what is bought (USDA ERS, Fruit and Vegetable Prices 2022,
    // "Grapes:Fresh"). Monday: ¼ cup × (1 + 0.7) = 63.75 g, bought 66.4 g; Thursday: twice that.
    const grapes = lines.find((line) => line.foodId === "grapes");
    expect(grapes).toMatchObject({
      amount: "1 pack of 340 g",
      cents: 320,
      forDays: ["Monday", "Thursday"],
    });
    expect(grapes?.arithmetic).toBe(
      "1 × ¼ cup + 1 × 0.17 cup → 64 g ready to eat → 66 g as bought → 1 pack of 340 g, 274 g left for Thursday, 141 g of it left over",
    );
    expect(lines.map((line) => line.foodId).sort()).toEqual([
      "cucumber-slices",
      "grapes",
      "hummus",
    ]);
  });

  test("changing one lunch changes only the lines of its food", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, WEEK);
    const before = linesOf(await errands(context));
    await changeLunch(context, "2026-03-18", "cucumber-slices", 400);
    const after = linesOf(await errands(context));
    const others = (lines: typeof before) =>
      lines.filter((line) => line.foodId !== "cucumber-slices");
    expect(others(after)).toEqual(others(before));
    expect(after.find((line) => line.foodId === "cucumber-slices")?.packs).toBeGreaterThan(1);
  });

  test("an amount that cannot be weighed is asked about, and the rest is planned", async () => {
    const context = testContext(SATURDAY);
    const odd = { on: "2026-03-17", foodId: "cheddar-cheese", amount: 2, unit: "bucket" };
    await errandSeries(context, MONDAY, [...WEEK, odd]);
    const view = await errands(context);
    expect(view.asks).toMatchObject([{ foodId: "cheddar-cheese", unit: "bucket", isWeight: true }]);
    expect(view.asks[0]?.question).toContain("Nobody has said what one bucket");
    expect(linesOf(view).some((line) => line.foodId === "cheddar-cheese")).toBe(false);
  });

  test("a food without a product is bought at its own price in a sensible pack, and the line says so", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, [
      { on: "2026-03-17", foodId: "apple", amount: 1, unit: "serving" },
    ]);
    const [line] = linesOf(await errands(context));
    expect(line).toMatchObject({ foodId: "apple", isAssumed: true, state: "open" });
    expect(line?.cents).toBeGreaterThan(0);
  });

  test("without a shop the quantities stand all the same", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, WEEK);
    await context.db.shop.updateMany({ data: { retiredAt: context.now } });
    const view = await errands(context);
    expect(view.hasShops).toBe(false);
    expect(view.runs.map((run) => run.shopName)).toEqual(view.runs.map(() => "Any shop"));
    expect(linesOf(view)).toHaveLength(3);
  });

  test("weeks too far ahead are not planned, an empty week says that nothing is needed", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, WEEK);
    expect(await loadErrands(context, day("2027-03-15"))).toBeUndefined();
    expect(await loadErrands(context, day("2026-03-23"))).toMatchObject({
      runs: [],
      hasLunches: false,
    });
  });
});
