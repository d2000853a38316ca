import { describe, expect, test } from "vitest";
import { describeWeekCost } from "#lib/shopping/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { ChangeStockInput, SaveParInput } from "#lib/use-cases/errands/change-stock.input.ts";
import { changeStock, savePar } from "#lib/use-cases/errands/change-stock.ts";
import { loadErrands } from "#lib/use-cases/errands/load-errands.ts";
import { loadOwed } from "#lib/use-cases/errands/load-owed.ts";
import { loadStock } from "#lib/use-cases/errands/load-stock.ts";
import { settleOwedFood } from "#lib/use-cases/errands/settle-owed.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { swapItem } from "#lib/use-cases/swap-item.ts";
import { undoSwap } from "#lib/use-cases/undo-swap.ts";
import { errandSeries, MONDAY, SATURDAY } from "#tests/support/errand-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const change = (context: Context, input: object) =>
  changeStock(context, ChangeStockInput.parse(input));

async function linesOf(context: Context) {
  const view = await loadErrands(context, MONDAY);
  return (view?.runs ?? []).flatMap((run) => run.aisles.flatMap((aisle) => aisle.lines));
}

describe("stock", () => {
  test("what is on hand is not bought, the label's use-by wins, and what ends first stands first", async () => {
    const context = testContext(SATURDAY);
    const grapes = { on: "2026-03-17", foodId: "grapes", amount: 60, unit: "g" };
    await errandSeries(context, MONDAY, [grapes]);
    expect((await linesOf(context)).map((line) => line.foodId)).toEqual(["grapes"]);
    const lot = { kind: "add", food: "grapes", grams: 300, place: "fridge", useBy: "2026-03-17" };
    expect(await change(context, lot)).toMatchObject({ ok: true });
    expect(await linesOf(context)).toEqual([]);

    const [kept] = (await loadStock(context)).lots;
    // Refrigerated grapes keep 7 days (USDA FoodKeeper v128, no. 261): the label says less, and wins.
    expect(kept).toMatchObject({ lastDay: "2026-03-17", daysLeft: 3, source: "label" });
    const seen = { lotId: kept?.id, seenGrams: 300 };
    const early = { kind: "count", ...seen, grams: 300, useBy: "2026-03-16", place: "fridge" };
    await change(context, early);
    expect((await linesOf(context)).map((line) => line.foodId)).toEqual(["grapes"]);
    await change(context, { kind: "count", ...seen, grams: 300, useBy: null, place: "fridge" });
    expect((await loadStock(context)).lots).toMatchObject([
      { lastDay: "2026-03-21", source: "reference" },
    ]);
    await change(context, { ...lot, food: "hummus", useBy: "2026-03-15" });
    expect((await loadStock(context)).lots.map(({ name }) => name)).toEqual(["hummus", "grapes"]);
  });

  test("is opened, used in part, thrown away and frozen; a second tab is told", async () => {
    const context = testContext(SATURDAY);
    await errandSeries(context, MONDAY, []);
    await change(context, {
      kind: "add",
      food: "hummus",
      grams: 200,
      place: "fridge",
      useBy: null,
    });
    const [hummus] = (await loadStock(context)).lots;
    const at = { lotId: hummus?.id, seenGrams: 200 };
    await change(context, { kind: "use", ...at, grams: 50 });
    expect(await change(context, { kind: "use", ...at, grams: 50 })).toEqual({
      ...{ ok: false, problem: { kind: "changed-elsewhere" } },
    });
    // Opened hummus keeps 7 days (USDA FoodKeeper v128, no. 181), a closed one 90.
    expect((await loadStock(context)).lots).toMatchObject([
      { grams: 150, openedOn: SATURDAY, lastDay: "2026-03-21", canFreeze: false },
    ]);
    const now = { ...at, seenGrams: 150 };
    expect(await change(context, { kind: "use", ...now, grams: 151 })).toMatchObject({ ok: false });
    expect(await change(context, { kind: "freeze", ...now })).toMatchObject({ ok: false });
    await change(context, { kind: "throw", ...now, grams: 30 });
    await change(context, { kind: "throw", ...now, seenGrams: 120, grams: 120 });
    expect((await loadStock(context)).lots).toEqual([]);
    const gone = await context.db.stock.findMany({ orderBy: { grams: "asc" } });
    expect(gone.map(({ grams, goneHow }) => [grams, goneHow])).toEqual([
      [30, "thrown"],
      [120, "thrown"],
    ]);
    const odd = { kind: "add", food: "a left shoe", grams: 200, place: "fridge", useBy: null };
    expect(await change(context, odd)).toEqual({ ok: false, problem: { kind: "food-unknown" } });
  });

  test("a staple below its level comes on the list, once, with what lunches take of it", async () => {
    const context = testContext(SATURDAY);
    const cheese = { on: "2026-03-17", foodId: "cheddar-cheese", amount: 30, unit: "g" };
    await errandSeries(context, MONDAY, [cheese]);
    const par = { food: "cheddar cheese", gramsPerDay: 50, leadDays: 1, reserveGrams: 100 };
    expect(await savePar(context, SaveParInput.parse(par))).toMatchObject({ ok: true });
    // 50 × (1 + 7) + 100 = 500 g: two packs of 250 g, 51 g of which the lunch takes.
    const [line] = await linesOf(context);
    expect(line).toMatchObject({ foodId: "cheddar-cheese", packs: 2 });
    expect((await loadStock(context)).pars).toMatchObject([{ level: "500 g", missing: "500 g" }]);
    await savePar(context, SaveParInput.parse({ ...par, gramsPerDay: 0, reserveGrams: 0 }));
    expect(await linesOf(context)).toMatchObject([{ packs: 1 }]);
  });

  test("shutting the lid takes the lunch from stock, once", async () => {
    const context = testContext("2026-03-16");
    const grapes = { on: "2026-03-16", foodId: "grapes", amount: 48, unit: "g" };
    await errandSeries(context, MONDAY, [grapes]);
    await change(context, {
      kind: "add",
      food: "grapes",
      grams: 300,
      place: "fridge",
      useBy: null,
    });
    const lunch = { lunchId: "lunch-2026-03-16", minutes: 20 };
    await packLunch(context, lunch);
    await packLunch(context, lunch);
    // 48 g × 1.7 ÷ 0.96 (yield, USDA ERS 2022) = 85 g.
    expect((await loadStock(context)).lots).toMatchObject([{ grams: 215, openedOn: "2026-03-16" }]);
  });
});

describe("a swap after the lid was shut", () => {
  const LUNCH = { lunchId: "lunch-2026-03-16", minutes: null };
  const OUT = { itemId: "2026-03-16-grapes", foodId: "hummus", reason: "wrong tin" };
  const lotsOf = async (context: Context) =>
    (await loadStock(context)).lots
      .map(({ name, grams, openedOn }) => ({ name, grams, openedOn }))
      .sort((one, other) => one.name.localeCompare(other.name));

  async function packed() {
    const context = testContext("2026-03-16");
    const grapes = { on: "2026-03-16", foodId: "grapes", amount: 48, unit: "g" };
    await errandSeries(context, MONDAY, [grapes, { ...grapes, on: "2026-03-17" }]);
    for (const [food, grams] of [
      ["grapes", 300],
      ["hummus", 200],
    ] as const)
      await change(context, { kind: "add", food, grams, place: "fridge", useBy: null });
    const before = await lotsOf(context);
    await packLunch(context, LUNCH);
    return { context, before };
  }

  test("gives back what came out, which is owed, and takes what stepped in", async () => {
    const { context } = await packed();
    expect(await loadOwed(context)).toEqual([]);
    await swapItem(context, OUT);
    // Hummus steps in at its usual serving of 30 g × 1.7; the grapes' pack was opened and stays so.
    expect(await lotsOf(context)).toEqual([
      { name: "grapes", grams: 300, openedOn: "2026-03-16" },
      { name: "hummus", grams: 149, openedOn: "2026-03-16" },
    ]);
    expect(await loadOwed(context)).toMatchObject([{ food: "grapes", grams: 85 }]);
  });

  test("is taken back with its stock: the pack that only the stand-in opened is closed again", async () => {
    const { context, before } = await packed();
    const atLid = await lotsOf(context);
    await swapItem(context, OUT);
    expect(await undoSwap(context, { itemId: OUT.itemId })).toMatchObject({ ok: true });
    expect(await lotsOf(context)).toEqual(atLid);
    expect(atLid).not.toEqual(before);
    expect(await loadOwed(context)).toEqual([]);
    const items = await context.db.lunchItem.findMany({ where: { lunchId: LUNCH.lunchId } });
    expect(items).toMatchObject([{ foodId: "grapes", fate: "packed", reason: "" }]);
    expect(await undoSwap(context, { itemId: OUT.itemId })).toEqual({
      ...{ ok: false, problem: { kind: "not-scrapped" } },
    });
  });

  test("brings a pack back that was used up, and a new one where the rest was thrown away", async () => {
    const { context } = await packed();
    const [lot] = (await loadStock(context)).lots.filter(({ name }) => name === "grapes");
    const rest = { lotId: lot?.id, seenGrams: 215, grams: 215 };
    await change(context, { kind: "use", ...rest });
    await swapItem(context, { ...OUT, foodId: "" });
    expect(await lotsOf(context)).toContainEqual({
      ...{ name: "grapes", grams: 85, openedOn: "2026-03-16" },
    });
    const other = (await packed()).context;
    const [thrown] = (await loadStock(other)).lots.filter(({ name }) => name === "grapes");
    await change(other, { kind: "throw", ...rest, lotId: thrown?.id });
    await swapItem(other, { ...OUT, foodId: "" });
    expect(await lotsOf(other)).toContainEqual({
      ...{ name: "grapes", grams: 85, openedOn: "2026-03-16" },
    });
  });

  test("before the lid is shut moves no stock, and undone leaves the lunch as it was", async () => {
    const { context } = await packed();
    const kept = await lotsOf(context);
    const later = { lunchId: "lunch-2026-03-17" };
    await swapItem(context, { ...OUT, itemId: "2026-03-17-grapes" });
    expect(await lotsOf(context)).toEqual(kept);
    await undoSwap(context, { itemId: "2026-03-17-grapes" });
    expect(await lotsOf(context)).toEqual(kept);
    const items = await context.db.lunchItem.findMany({ where: later });
    expect(items).toMatchObject([{ foodId: "grapes", fate: "planned" }]);
  });

  test("is not taken back once the food was used up elsewhere, or what stepped in was swapped or judged", async () => {
    const { context } = await packed();
    await swapItem(context, OUT);
    const undo = () => undoSwap(context, { itemId: OUT.itemId });
    const [hummus] = await context.db.lunchItem.findMany({ where: { fate: "stepped-in" } });
    await swapItem(context, { itemId: hummus?.id ?? "", foodId: "", reason: "no lid for it" });
    expect(await undo()).toEqual({ ok: false, problem: { kind: "swapped-on" } });
    await undoSwap(context, { itemId: hummus?.id ?? "" });
    await settleOwedFood(context, { itemId: OUT.itemId, how: "used" });
    expect(await undo()).toEqual({ ok: false, problem: { kind: "settled" } });
  });
});

describe("owed", () => {
  async function scrapped() {
    const context = testContext("2026-03-16");
    const grapes = { on: "2026-03-16", foodId: "grapes", amount: 48, unit: "g" };
    const later = { on: "2026-03-18", foodId: "hummus", amount: 30, unit: "g" };
    await errandSeries(context, MONDAY, [grapes, later]);
    await change(context, {
      kind: "add",
      food: "grapes",
      grams: 300,
      place: "fridge",
      useBy: "2026-03-18",
    });
    await swapItem(context, { itemId: "2026-03-16-grapes", foodId: "", reason: "bruised bowl" });
    return context;
  }

  test("a scrapped item stays owed with the day its stock ends, until it is settled", async () => {
    const context = await scrapped();
    expect(await loadOwed(context)).toMatchObject([
      { food: "grapes", grams: 85, useBy: "2026-03-18", daysLeft: 2, reason: "bruised bowl" },
    ]);
    const used = { itemId: "2026-03-16-grapes", how: "used" } as const;
    expect(await settleOwedFood(context, used)).toMatchObject({ ok: true });
    expect(await loadOwed(context)).toEqual([]);
    expect((await loadStock(context)).lots).toMatchObject([{ grams: 215 }]);
    expect(await settleOwedFood(context, used)).toEqual({ ok: false, problem: { kind: "gone" } });
  });

  test("what is frozen becomes a lot in the freezer, the rest stays; what is let go is thrown away", async () => {
    const context = await scrapped();
    await settleOwedFood(context, { itemId: "2026-03-16-grapes", how: "frozen" });
    const places = (await loadStock(context)).lots.map(({ grams, place }) => [grams, place]);
    expect(places).toEqual([
      [215, "fridge"],
      [85, "freezer"],
    ]);
    const other = await scrapped();
    await settleOwedFood(other, { itemId: "2026-03-16-grapes", how: "let-go" });
    expect(await other.db.stock.findMany({ where: { goneHow: "thrown" } })).toMatchObject([
      { grams: 85 },
    ]);
  });

  test("past its use-by it can only be let go", async () => {
    const context = { ...(await scrapped()), today: "2026-03-20" } as Context;
    const settle = (how: "used" | "frozen" | "let-go") =>
      settleOwedFood(context, { itemId: "2026-03-16-grapes", how });
    expect(await settle("used")).toMatchObject({ ok: false, problem: { kind: "past-its-use-by" } });
    expect(await settle("frozen")).toMatchObject({ ok: false });
    expect(await settle("let-go")).toMatchObject({ ok: true });
  });

  test("is settled by a later lunch that packs the food", async () => {
    const context = await scrapped();
    await context.db.lunchItem.update({
      where: { id: "2026-03-18-hummus" },
      data: { foodId: "grapes" },
    });
    const later = { ...context, today: "2026-03-18" } as Context;
    await packLunch(later, { lunchId: "lunch-2026-03-18", minutes: null });
    expect(await loadOwed(later)).toEqual([]);
  });
});

test("the cost of a week is held against the budget", () => {
  const week = { week: MONDAY, cents: 4210, paidCents: 0, budgetCents: 4500, overCents: 0 };
  expect(describeWeekCost(week, (cents) => (cents / 100).toFixed(2))).toBe(
    "42.10 of 45.00, 2.90 to spare.",
  );
});
