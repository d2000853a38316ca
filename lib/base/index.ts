/** Base: results, seeded randomness, exact fractions, small words every subject uses. Imports nothing. */
export { ok, refuse, type Result } from "./result.ts";
export { hash32, randomFrom, type Random } from "./random.ts";
export { drawBeta, drawNormal } from "./draw.ts";
export { isPresent } from "./present.ts";
export { groupBy } from "./group-by.ts";
export { keepRecent } from "./keep-recent.ts";
export {
  ceilingOf,
  compareFractions,
  dividedBy,
  type Fraction,
  fraction,
  fractionOf,
  leastCommonMultiple,
  minus,
  numberOf,
  plus,
  sumOfFractions,
  times,
  ZERO,
} from "./fraction.ts";
