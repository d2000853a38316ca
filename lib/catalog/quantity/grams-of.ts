import pluralize from "pluralize";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Food } from "../food.ts";
import { EACH, SERVING } from "./count-units.ts";
import { CUP_ML, measureOf, MEASURES, type Measure } from "./measures.ts";

/** What weighing a food takes: any `Food`, or a row with these columns. */
export type WeighableFood = Pick<Food, "name" | "gramsPerCup" | "unitWeights" | "servingGrams"> & {
  readonly countUnit?: string | null;
};

/** Why an amount cannot be weighed, with what would have to be known. */
export type WeighProblem =
  | { readonly kind: "amount-not-positive" }
  | { readonly kind: "cup-weight-missing"; readonly food: string; readonly unit: string }
  | {
      readonly kind: "unit-weight-missing";
      readonly food: string;
      readonly unit: string;
      /** Counted units whose weight is known, to choose from. */
      readonly known: readonly string[];
    };

/** FNDDS calls one whole piece by these names; they stand for a count without a unit. */
const WHOLE_UNITS = ["fruit", "whole", "piece", "regular"];

/**
 * Grams of an amount of a food (edible portion). A weight is converted exactly; a volume needs the
 * weight of a cup, or of a measured unit such as a tablespoon; a count needs the weight of that unit.
 * Refuses, naming what is missing, rather than guess a density or a piece's weight.
 * `gramsOf(hummus, { amount: 2, unit: "tbsp" })`.
 */
export function gramsOf(
  food: WeighableFood,
  quantity: { readonly amount: number; readonly unit: string },
): Result<number, WeighProblem> {
  const { amount, unit } = quantity;
  if (!Number.isFinite(amount) || amount <= 0) return refuse({ kind: "amount-not-positive" });
  const measure = measureOf(unit);
  if (measure?.kind === "weight") return ok(amount * measure.size);
  if (measure) return gramsOfVolume(food, amount, measure);
  if (unit === SERVING) return ok(amount * food.servingGrams);
  const each = unit === EACH || isSameWord(unit, food.name) ? weightOfOne(food) : undefined;
  const weight = each ?? weightOfUnit(food, unit);
  if (weight !== undefined) return ok(amount * weight);
  return refuse({ kind: "unit-weight-missing", food: food.name, unit, known: countedUnits(food) });
}

function gramsOfVolume(
  food: WeighableFood,
  amount: number,
  measure: Measure,
): Result<number, WeighProblem> {
  const isCup = measure.name === "cup" && food.gramsPerCup !== null;
  const own = Object.entries(food.unitWeights).find(
    ([key]) => measureOf(key)?.name === measure.name,
  );
  if (own && !isCup) return ok(amount * own[1]);
  const gramsPerMl = densityOf(food);
  if (gramsPerMl !== undefined) return ok(amount * measure.size * gramsPerMl);
  return refuse({ kind: "cup-weight-missing", food: food.name, unit: measure.name });
}

/** Grams per millilitre by the weight of a cup, else of the largest measured unit that is known. */
function densityOf(food: WeighableFood): number | undefined {
  if (food.gramsPerCup !== null) return food.gramsPerCup / CUP_ML;
  const known = Object.entries(food.unitWeights)
    .map(([key, grams]) => ({ measure: measureOf(key), grams }))
    .filter((entry) => entry.measure?.kind === "volume")
    .sort((left, right) => (right.measure?.size ?? 0) - (left.measure?.size ?? 0));
  const best = known[0];
  return best?.measure ? best.grams / MEASURES[best.measure.name].size : undefined;
}

function weightOfOne(food: WeighableFood): number | undefined {
  const names = [food.countUnit, food.name, ...WHOLE_UNITS];
  for (const name of names) {
    const weight = name ? weightOfUnit(food, name) : undefined;
    if (weight !== undefined) return weight;
  }
  return undefined;
}

/** The weight filed under a unit: its own key, or one of a key's alternatives ("section/slice"). */
function weightOfUnit(food: WeighableFood, unit: string): number | undefined {
  const entries = Object.entries(food.unitWeights);
  const exact = entries.find(([key]) => isSameWord(key, unit));
  if (exact) return exact[1];
  const either = entries.filter(([key]) => key.split("/").some((name) => isSameWord(name, unit)));
  return either.length === 1 ? either[0]?.[1] : undefined;
}

function countedUnits(food: WeighableFood): string[] {
  return Object.keys(food.unitWeights).filter((key) => !measureOf(key));
}

function isSameWord(left: string, right: string): boolean {
  return singular(left) === singular(right);
}

function singular(text: string): string {
  return pluralize.singular(text.trim().toLowerCase());
}
