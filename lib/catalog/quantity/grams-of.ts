import pluralize from "pluralize";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Food } from "../food.ts";
import { EACH, SERVING } from "./count-units.ts";
import { CUP_ML, measureOf, MEASURES, type Measure } from "./measures.ts";
import { isLikePlain, measureAndState, weightOfCounted, weightOfPlain } from "./unit-weights.ts";

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
  const own = weightOfUnit(food, unit) ?? weightInBrackets(unit);
  if (own !== undefined) return ok(amount * own);
  const inState = measureAndState(unit);
  if (!inState) return refuse(unknownUnit(food, unit));
  const plain = measureOf(inState.measure);
  if (plain && isLikePlain(inState.state)) return gramsOfVolume(food, amount, plain);
  return refuse({ kind: "cup-weight-missing", food: food.name, unit });
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
  const weight = own?.[1] ?? weightOfPlain(food.unitWeights, measure.name);
  if (weight !== undefined && !isCup) return ok(amount * weight);
  const gramsPerMl = densityOf(food);
  if (gramsPerMl !== undefined) return ok(amount * measure.size * gramsPerMl);
  return refuse({ kind: "cup-weight-missing", food: food.name, unit: measure.name });
}

/** Grams per millilitre by the weight of a cup, else of the largest measured unit that is known. */
function densityOf(food: WeighableFood): number | undefined {
  const cup = food.gramsPerCup ?? weightOfPlain(food.unitWeights, "cup");
  if (cup !== undefined) return cup / CUP_ML;
  const known = Object.entries(food.unitWeights)
    .map(([key, grams]) => ({ measure: measureOf(key), grams }))
    .filter((entry) => entry.measure?.kind === "volume")
    .sort((left, right) => (right.measure?.size ?? 0) - (left.measure?.size ?? 0));
  const best = known[0];
  return best?.measure ? best.grams / MEASURES[best.measure.name].size : undefined;
}

/** "each", the food's own name or its last word ("pita", of a whole wheat pita) count whole ones. */
function weightOfUnit(food: WeighableFood, unit: string): number | undefined {
  const counted = weightOfCounted(food.unitWeights, unit);
  if (counted !== undefined) return counted;
  const name = singular(food.name);
  const isWhole = unit === EACH || [name, name.split(" ").at(-1)].includes(singular(unit));
  if (!isWhole) return undefined;
  for (const whole of [food.countUnit, food.name, ...WHOLE_UNITS]) {
    const weight = whole ? weightOfCounted(food.unitWeights, whole) : undefined;
    if (weight !== undefined) return weight;
  }
  return undefined;
}

/** "container (8 oz)" says itself what one weighs. */
function weightInBrackets(unit: string): number | undefined {
  const found = /\((\d+(?:\.\d+)?) ?([a-z]+)\)\s*$/i.exec(unit);
  const measure = found ? measureOf(found[2] ?? "") : undefined;
  return measure?.kind === "weight" ? Number(found?.[1]) * measure.size : undefined;
}

function unknownUnit(food: WeighableFood, unit: string): WeighProblem {
  const known = Object.keys(food.unitWeights).filter((key) => !measureOf(key));
  return { kind: "unit-weight-missing", food: food.name, unit, known };
}

function singular(text: string): string {
  return pluralize.singular(text.trim().toLowerCase());
}
