import {
  ceilingOf,
  compareFractions,
  dividedBy,
  type Fraction,
  fractionOf,
  minus,
  ok,
  refuse,
  type Result,
  times,
  ZERO,
} from "#lib/base/index.ts";
import { gramsOf, measureOf, type WeighProblem } from "#lib/catalog/index.ts";
import type { FoodToBuy } from "./need.ts";

/** How a product is packed, as its label or the shelf says it. */
export type PackSize = {
  readonly amount: number;
  /** A measure, or a counted unit of the food ("each", "slice"). */
  readonly unit: string;
};

/**
 * Grams as purchased in one pack. A weight is what the label says. A count or a volume is weighed as
 * the food is eaten and divided by its yield, since reference pieces are weighed ready to eat
 * (FNDDS portions); so eight clementines are eight portions of one, whatever their peel weighs.
 * Refuses, saying what to ask, when the unit has no known weight.
 */
export function packGramsOf(food: FoodToBuy, pack: PackSize): Result<Fraction, WeighProblem> {
  if (!Number.isFinite(pack.amount) || pack.amount <= 0) {
    return refuse({ kind: "amount-not-positive" });
  }
  const one = gramsOf(food, { amount: 1, unit: pack.unit });
  if (!one.ok) return one;
  const weighed = times(fractionOf(pack.amount), fractionOf(one.value));
  if (measureOf(pack.unit)?.kind === "weight") return ok(weighed);
  return ok(dividedBy(weighed, fractionOf(food.yieldFactor)));
}

/** Packs to buy so that there are at least `grams`; buying rounds up (USDA Food Buying Guide). */
export function packsFor(grams: Fraction, packGrams: Fraction): number {
  return compareFractions(grams, ZERO) <= 0 ? 0 : Number(ceilingOf(dividedBy(grams, packGrams)));
}

/** Grams left in the packs when `grams` have been taken; never below zero when `packsFor` bought. */
export function leftOver(grams: Fraction, packs: number, packGrams: Fraction): Fraction {
  return minus(times(fractionOf(packs), packGrams), grams);
}

/**
 * Purchase units for 100 servings, rounded up to a tenth, as the USDA Food Buying Guide prints its
 * column "purchase units for 100 servings".
 */
export function unitsPer100Servings(servingsPerUnit: number): number {
  const tenths = dividedBy({ top: 1000n, bottom: 1n }, fractionOf(servingsPerUnit));
  return Number(ceilingOf(tenths)) / 10;
}
