import { describe, expect, test } from "vitest";
import { isPresent } from "#lib/base/index.ts";
import { ShelfLives } from "#lib/catalog/index.ts";
import { referenceFoods } from "#seed/index.ts";
import {
  BUYING_GUIDE,
  ERS_CUPS,
  ERS_DRIED_CUPS,
  ERS_YIELDS,
  FOODKEEPER,
  IN_SEASON,
  OUT_OF_SEASON,
  SEASON_MONTHS,
  SHORTER_OF_TWO,
} from "./catalogue.published.ts";
import { referenceFood } from "./reference-food.ts";
import { readShared, type SharedRow } from "./shared-data.ts";

/** Exact (international yard and pound agreement 1959). */
const GRAMS_PER_POUND = 453.59237;

describe("purchase yields and cup weights", () => {
  test.each(ERS_YIELDS)("%s has the ERS yield of %s", (id, _row, yieldFactor) => {
    expect(referenceFood(id).yieldFactor).toBe(yieldFactor);
  });

  test.each(ERS_CUPS)("a cup of %s weighs its ERS cup equivalent", (id, pounds) => {
    const { gramsPerCup } = referenceFood(id);
    expect(Math.abs((gramsPerCup ?? 0) - pounds * GRAMS_PER_POUND)).toBeLessThan(0.5);
  });

  test.each(ERS_DRIED_CUPS)("a cup of %s weighs about two dried cup equivalents", (id, pounds) => {
    const { gramsPerCup } = referenceFood(id);
    const ratio = (gramsPerCup ?? 0) / (2 * pounds * GRAMS_PER_POUND);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.25);
  });

  test.each(BUYING_GUIDE)(
    "a pound of %s gives the Buying Guide's ¼ cups within 4 %%",
    (id, cups) => {
      const { yieldFactor, gramsPerCup } = referenceFood(id);
      const servings = (4 * GRAMS_PER_POUND * yieldFactor) / (gramsPerCup ?? 0);
      expect(Math.abs(servings / cups - 1)).toBeLessThan(0.04);
    },
  );

  test("ground beef loses a quarter in cooking (Food Buying Guide: 1 lb gives 0.74 lb)", () => {
    expect(referenceFood("ground-beef").yieldFactor).toBe(0.74);
  });
});

describe("shelf lives", () => {
  test.each(FOODKEEPER)("%s: %s is %i days, FoodKeeper no. %i", (id, life, days) => {
    expect(referenceFood(id).shelf[life]).toBe(days);
  });

  test.each(SHORTER_OF_TWO)("%s keeps the shorter of two entries: %i days", (id, days) => {
    expect(referenceFood(id).shelf.preparedDays).toBe(days);
  });
});

describe("seasons", () => {
  const inMonths = (id: string, months: readonly number[]): boolean[] => {
    const season = referenceFood(id).seasonMonths;
    return months.map((month) => season?.includes(month) ?? true);
  };

  test.each(Object.entries(IN_SEASON))("the %s list is in season", (season, ids) => {
    const months = SEASON_MONTHS[season] ?? [];
    expect(ids.filter((id) => inMonths(id, months).includes(false))).toEqual([]);
  });

  test.each(Object.entries(OUT_OF_SEASON))("the %s list is not the shifted one", (season, ids) => {
    const months = SEASON_MONTHS[season] ?? [];
    expect(ids.filter((id) => inMonths(id, months).includes(true))).toEqual([]);
  });
});

const keeper = readShared("data/foodkeeper/foodkeeper_v128_products.csv");
const TOLD = keeper ? "" : " (left out: every sourced life, ../shared is not there)";

test.skipIf(!keeper)(`every life that names FoodKeeper is a life of that entry${TOLD}`, () => {
  const byId = new Map<string, SharedRow>((keeper ?? []).map((row) => [row["ID"] ?? "", row]));
  const wrong: string[] = [];
  let checked = 0;
  for (const { food, sources } of referenceFoods()) {
    if (!sources.shelf.includes("FoodKeeper v128, no")) continue;
    const entries = [...sources.shelf.matchAll(/\b(?:no\. |nos\. |and )(\d+)/g)].flatMap(
      ([, id = ""]) => [byId.get(id)].filter(isPresent),
    );
    expect(entries.length, food.id).toBeGreaterThan(0);
    for (const [life, days] of Object.entries(ShelfLives.parse(food.shelf))) {
      if (days === null) continue;
      checked += 1;
      if (!entries.some((entry) => livesOf(entry, life).includes(days))) {
        wrong.push(`${food.id} ${life} ${days}`);
      }
    }
  }
  expect(wrong).toEqual([]);
  expect(checked).toBeGreaterThan(700);
});

const DAYS: Readonly<Record<string, number>> = {
  Days: 1,
  Weeks: 7,
  Months: 30,
  Years: 365,
  Year: 365,
};

const FIELDS: Readonly<Record<string, readonly string[]>> = {
  pantryDays: ["Pantry", "DOP_Pantry"],
  pantryOpenedDays: ["Pantry_After_Opening"],
  fridgeDays: ["Refrigerate", "DOP_Refrigerate"],
  fridgeOpenedDays: ["Refrigerate_After_Opening", "Refrigerate"],
  cutDays: ["Refrigerate_After_Opening", "Refrigerate", "DOP_Refrigerate"],
  preparedDays: ["Refrigerate", "DOP_Refrigerate", "Refrigerate_After_Opening"],
  freezerDays: ["Freeze", "DOP_Freeze"],
};

/** The shorter ends that an entry states for one of our lives, in days. */
function livesOf(entry: SharedRow, life: string): number[] {
  return (FIELDS[life] ?? []).flatMap((field) => {
    const unit = DAYS[entry[`${field}_Metric`] ?? ""];
    return unit ? [Number(entry[`${field}_Min`]) * unit] : [];
  });
}
