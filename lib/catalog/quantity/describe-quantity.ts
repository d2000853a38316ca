import pluralize from "pluralize";
import { EACH } from "./count-units.ts";
import type { WeighProblem } from "./grams-of.ts";
import { isMeasureName, MEASURES } from "./measures.ts";
import { VULGAR_FRACTIONS } from "./numbers.ts";

const SIGNS = Object.entries(VULGAR_FRACTIONS).filter(([sign]) => !/[⅕⅖⅗⅘⅙⅚]/.test(sign));
/** A fraction sign is used when it is within half a percent of the amount. */
const SIGN_TOLERANCE = 0.005;

/**
 * An amount as a cook writes it: "¼ cup", "1½ cups", "2 slices", "30 g". US customary and counted
 * units in fractions where one fits, metric ones in decimals; "each" shows the number alone.
 */
export function describeAmount(amount: number, unit: string): string {
  const number = writesDecimals(unit) ? decimals(amount) : inFractions(amount);
  return unit === EACH ? number : `${number} ${unitFor(amount, unit)}`;
}

/** An amount or a range: "1–2 slices". */
export function describeQuantity(quantity: {
  readonly amount: number;
  readonly amountMax?: number | null;
  readonly unit: string;
}): string {
  const { amount, amountMax, unit } = quantity;
  if (amountMax === undefined || amountMax === null) return describeAmount(amount, unit);
  return `${describeAmount(amount, EACH)}–${describeAmount(amountMax, unit)}`;
}

/** A refusal to weigh, in one sentence that says what to enter. */
export function describeWeighProblem(problem: WeighProblem): string {
  switch (problem.kind) {
    case "amount-not-positive":
      return "The amount must be a number above zero.";
    case "cup-weight-missing":
      return `Nobody has said what a cup of ${problem.food} weighs, so ${problem.unit} cannot be turned into grams.`;
    case "unit-weight-missing": {
      const known = problem.known.length > 0 ? ` Known: ${problem.known.join(", ")}.` : "";
      const one = problem.unit === EACH ? "one" : `one ${problem.unit}`;
      return `Nobody has said what ${one} of ${problem.food} weighs.${known}`;
    }
  }
}

function writesDecimals(unit: string): boolean {
  return isMeasureName(unit) && MEASURES[unit].writtenIn === "decimals";
}

function unitFor(amount: number, unit: string): string {
  if (amount <= 1) return unit;
  if (isMeasureName(unit)) return MEASURES[unit].plural;
  return /^(?:extra )?(?:small|medium|large)$/.test(unit) ? unit : pluralize(unit);
}

function inFractions(amount: number): string {
  const whole = Math.floor(amount + SIGN_TOLERANCE);
  const part = amount - whole;
  if (whole > 0 && Math.abs(part) <= SIGN_TOLERANCE) return String(whole);
  const sign = SIGNS.find(([, value]) => Math.abs(value - part) <= SIGN_TOLERANCE);
  if (!sign) return decimals(amount);
  return whole === 0 ? sign[0] : `${whole}${sign[0]}`;
}

function decimals(amount: number): string {
  const digits = amount >= 100 ? 0 : amount >= 10 ? 1 : 2;
  return String(Number(amount.toFixed(digits)));
}
