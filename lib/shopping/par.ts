import {
  compareFractions,
  type Fraction,
  fractionOf,
  minus,
  plus,
  times,
  ZERO,
} from "#lib/base/index.ts";

/** How a staple is kept in hand. */
export type ParRule = {
  readonly gramsPerDay: number;
  /** Days from noticing that it runs low to having it. */
  readonly leadDays: number;
  readonly daysBetweenRuns: number;
  readonly reserveGrams: number;
};

/**
 * Grams of a staple to have after shopping: use per day × (lead days + days between runs) + reserve.
 * The periodic-review order-up-to level of stock keeping, *common practice, no source*.
 */
export function parGrams(rule: ParRule): Fraction {
  const days = fractionOf(rule.leadDays + rule.daysBetweenRuns);
  return plus(times(fractionOf(rule.gramsPerDay), days), fractionOf(rule.reserveGrams));
}

/** Grams to buy to be at par again; zero when there is enough. */
export function gramsToPar(rule: ParRule, gramsOnHand: number): Fraction {
  const short = minus(parGrams(rule), fractionOf(gramsOnHand));
  return compareFractions(short, ZERO) > 0 ? short : ZERO;
}
