import { describe, expect, test } from "vitest";
import { fraction, fractionOf, numberOf } from "#lib/base/index.ts";
import { day } from "#lib/calendar/index.ts";
import { convert } from "#lib/catalog/index.ts";
import {
  leftOver,
  needOf,
  needsOf,
  packGramsOf,
  packsFor,
  unitsPer100Servings,
  type Eater,
  type FoodToBuy,
  type PlannedItem,
} from "#lib/shopping/index.ts";
import { sharedRows } from "../catalog/shared-catalogue.ts";
import { food } from "./foods.ts";
import {
  CORN_COBS,
  ERS_ROWS,
  GROUND_BEEF,
  UNITS_PER_100,
  WATERMELON,
} from "./quantities.published.ts";

const POUND = 453.59237;

function eater(childId: string, own: Partial<Eater> = {}): Eater {
  return { childId, portionFactor: 1, share: null, ...own };
}

function planned(of: FoodToBuy, amount: number, unit: string, eaters: Eater[]): PlannedItem {
  return { id: of.id, day: day("2026-03-11"), food: of, productId: null, amount, unit, eaters };
}

function asPurchasedOf(of: FoodToBuy, amount: number, unit: string, children = 1) {
  const eaters = Array.from({ length: children }, (_, index) => eater(`child ${index}`));
  const need = needOf(planned(of, amount, unit, eaters));
  if (!need.ok) throw new Error(need.problem.kind);
  return need.value.asPurchased;
}

describe("published figures", () => {
  test.each(UNITS_PER_100)("units for 100 servings round up: %s", (_, servings, units) => {
    expect(unitsPer100Servings(servings)).toBe(units);
  });

  test("watermelon: 2 lb ready to eat take 3.28 lb, sold by the half pound 3.5 lb", () => {
    const melon = food("watermelon", { yieldFactor: WATERMELON.yieldFactor });
    const grams = asPurchasedOf(melon, WATERMELON.ediblePounds, "lb");
    expect(numberOf(grams) / POUND).toBeCloseTo(WATERMELON.pounds, 2);
    expect(packsFor(grams, fractionOf(POUND / 2)) / 2).toBe(WATERMELON.buyPounds);
  });

  test("corn cobs: 75 half cups take 30.74 lb, and 30.75 lb by the column of units", () => {
    const cob = food("corn cob", { unitWeights: { serving: POUND / CORN_COBS.servingsPerPound } });
    const grams = asPurchasedOf({ ...cob, servingGrams: POUND / 2.44 }, 1, "serving", 75);
    expect(numberOf(grams) / POUND).toBeCloseTo(CORN_COBS.pounds, 2);
    const byColumn = (CORN_COBS.servings * unitsPer100Servings(CORN_COBS.servingsPerPound)) / 100;
    expect(byColumn).toBeCloseTo(CORN_COBS.byColumn, 9);
  });

  test("ground beef: 230 servings of 2 oz take 39.1 lb by the column, within 1 % by the yield", () => {
    const { servings, ounces, servingsPerPound, pounds } = GROUND_BEEF;
    const byColumn = unitsPer100Servings(servingsPerPound) * (servings / 100) * ounces;
    expect(byColumn).toBeCloseTo(pounds, 1);
    const beef = food("ground beef", { yieldFactor: 0.74 });
    const byYield = numberOf(asPurchasedOf(beef, ounces, "oz", servings)) / POUND;
    expect(Math.abs(byYield / pounds - 1)).toBeLessThan(0.01);
  });

  test.each(ERS_ROWS)("ERS yields: a quarter cup of $food", (row) => {
    const gramsPerCup = row.cupPounds * POUND;
    const of = food(row.food, { yieldFactor: row.yieldFactor, gramsPerCup });
    expect(numberOf(asPurchasedOf(of, 0.25, "cup"))).toBeCloseTo(row.gramsPerQuarterCup, 1);
  });

  const rows = sharedRows("catalogue/samples/yield.csv");
  test.runIf(rows.length > 0)("pounds to buy agree with the whole shared yield sample", () => {
    expect(rows.length).toBeGreaterThanOrEqual(40);
    for (const row of rows) {
      const of = food(row["food"] ?? "", {
        yieldFactor: Number(row["ers_yield"]),
        gramsPerCup: Number(row["ers_cup_equiv_lb"]) * POUND,
      });
      const grams = asPurchasedOf(
        of,
        Number(row["cups_per_portion"]),
        "cup",
        Number(row["portions"]),
      );
      const pounds = numberOf(grams) / POUND;
      expect(Math.abs(pounds - Number(row["expected_lb_to_buy"])), of.name).toBeLessThan(0.00501);
    }
  });
  if (rows.length === 0) console.warn("Left out: 40 checks of purchase yields (no shared folder)");
});

describe("needs", () => {
  const grapes = food("grapes", { gramsPerCup: 150, yieldFactor: 0.96 });

  test("three thirds of a cup are one cup, and fill one pack of a cup to the gram", () => {
    const third = asPurchasedOf(grapes, 1 / 3, "cup", 3);
    expect(third).toEqual(asPurchasedOf(grapes, 1, "cup"));
    expect(packsFor(third, asPurchasedOf(grapes, 1, "cup"))).toBe(1);
  });

  test("doubles would buy a pack too many where fractions do not", () => {
    expect(Math.ceil((0.1 + 0.2) / 0.3)).toBe(2);
    const eaters = [eater("one", { share: 0.1 }), eater("two", { share: 0.2 })];
    const need = needOf(planned(food("oats"), 1, "kg", eaters));
    expect(need.ok && packsFor(need.value.asPurchased, fractionOf(300))).toBe(1);
  });

  test("portion factors scale the amount, a share of the child's own replaces it", () => {
    const need = needOf(
      planned(grapes, 0.5, "cup", [
        eater("one"),
        eater("small", { portionFactor: 0.5 }),
        eater("own", { portionFactor: 0.5, share: 1 }),
        eater("none", { share: 0 }),
      ]),
    );
    if (!need.ok) throw new Error(need.problem.kind);
    expect(need.value.portions).toEqual([
      { childId: "one", amount: 0.5 },
      { childId: "small", amount: 0.25 },
      { childId: "own", amount: 1 },
    ]);
    expect(numberOf(need.value.edible)).toBe(1.75 * 150);
  });

  test("an unknown weight is asked about, by item, and nothing is guessed", () => {
    const { needs, problems } = needsOf([
      planned(food("rock melon"), 1, "slice", [eater("one")]),
      planned(grapes, 1, "cup", [eater("one")]),
      planned(grapes, Number.NaN, "cup", [eater("one")]),
      planned(grapes, 1, "cup", [eater("one", { portionFactor: -1 })]),
      planned(grapes, 1, "cup", [eater("one", { share: 0 })]),
    ]);
    expect(needs.map((need) => need.itemId)).toEqual(["grapes"]);
    expect(problems).toEqual([
      {
        kind: "cannot-weigh",
        itemId: "rock-melon",
        why: { kind: "unit-weight-missing", food: "rock melon", unit: "slice", known: [] },
      },
      { kind: "cannot-weigh", itemId: "grapes", why: { kind: "amount-not-positive" } },
      { kind: "portion-not-a-number", itemId: "grapes", childId: "one" },
    ]);
  });
});

describe("packs", () => {
  const clementine = food("clementine", { unitWeights: { clementine: 74 }, yieldFactor: 0.77 });

  test("eight clementines are a bag of eight, whatever the peel weighs", () => {
    const bag = packGramsOf(clementine, { amount: 8, unit: "each" });
    if (!bag.ok) throw new Error(bag.problem.kind);
    expect(packsFor(asPurchasedOf(clementine, 1, "each", 8), bag.value)).toBe(1);
    expect(packsFor(asPurchasedOf(clementine, 1, "each", 9), bag.value)).toBe(2);
  });

  test("a labelled weight is a weight as purchased; a pack of unknown weight is asked about", () => {
    expect(packGramsOf(clementine, { amount: 1, unit: "lb" })).toEqual({
      ok: true,
      value: fractionOf(convert(1, "lb", "g") ?? 0),
    });
    expect(packGramsOf(clementine, { amount: 1, unit: "tray" }).ok).toBe(false);
    expect(packGramsOf(clementine, { amount: 0, unit: "g" }).ok).toBe(false);
  });

  test("two tubs are split among three children, and what is left is known exactly", () => {
    const need = fraction(400n, 1n);
    const tub = fraction(200n, 1n);
    expect(packsFor(need, tub)).toBe(2);
    expect(leftOver(need, 2, tub).top).toBe(0n);
    expect(packsFor({ top: 0n, bottom: 1n }, tub)).toBe(0);
  });
});
