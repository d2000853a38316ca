import type { LinearProgram } from "#lib/planner/index.ts";

/** Amounts of nutrients bought with one dollar, and the daily allowances, in the order of the table. */
export type DietTable = {
  readonly allowances: readonly number[];
  readonly foods: readonly (readonly number[])[];
};

/**
 * Stigler, The Cost of Subsistence, J. Farm Economics 27 (1945) 303-314, tables 1 and A: allowances a
 * day of calories (1000), protein (g), calcium (g), iron (mg), vitamin A (1000 IU), thiamine, riboflavin,
 * niacin and ascorbic acid (mg), and of his 77 foods' rows the five that the least cost diet (Dantzig
 * 1963, Linear Programming and Extensions, ch. 27) is made of, with one that it leaves out.
 */
export const STIGLER_ROWS: DietTable = {
  allowances: [3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75],
  foods: [
    [44.7, 1411, 2, 365, 0, 55.4, 33.3, 441, 0], // wheat flour, enriched
    [2.2, 333, 0.2, 139, 169.2, 6.4, 50.8, 316, 525], // beef liver
    [2.6, 125, 4, 36, 7.2, 9, 4.5, 26, 5369], // cabbage
    [1.1, 106, 0, 138, 918.4, 5.7, 13.8, 33, 2755], // spinach
    [26.9, 1691, 11.4, 792, 0, 38.4, 24.6, 217, 0], // navy beans, dried
    [11.6, 418, 0.7, 54, 0, 3.2, 1.9, 68, 0], // macaroni
  ],
};

/** Dollars a day of the least cost diet; × 365 the published 39.66 a year (Stigler's own guess: 39.93). */
export const STIGLER_LEAST_COST = 0.10866227821;

/** The diet problem as a program: dollars spent on each food, as few as give every allowance. */
export function dietProgram({ allowances, foods }: DietTable): LinearProgram {
  const rows = allowances.map((_, nutrient) => foods.map((food) => food[nutrient] ?? 0));
  return {
    columnCount: foods.length,
    rowCount: rows.length,
    costs: new Float64Array(foods.length).fill(-1),
    columnLower: new Float64Array(foods.length),
    columnUpper: new Float64Array(foods.length).fill(Infinity),
    isInteger: new Uint8Array(foods.length),
    rowLower: Float64Array.from(allowances),
    rowUpper: new Float64Array(rows.length).fill(Infinity),
    rowStarts: Int32Array.from([...rows, 0].keys(), (row) => row * foods.length),
    rowColumns: Int32Array.from(rows.flatMap(() => [...foods.keys()])),
    rowValues: Float64Array.from(rows.flat()),
    rowRules: Int32Array.from(rows.keys()),
    rules: allowances.map((_, nutrient) => `nutrient ${nutrient}`),
  };
}
