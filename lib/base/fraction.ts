/** An exact fraction in lowest terms; `bottom` is positive. */
export type Fraction = { readonly top: bigint; readonly bottom: bigint };

export const ZERO: Fraction = { top: 0n, bottom: 1n };

/**
 * A few units in the last place of a double: the rounding that a handful of multiplications leaves.
 * Two measures that differ by less were the same measure.
 */
const TOLERANCE = 2 ** -50;

/** The fraction of two whole numbers; throws when the lower is zero (a bug in the caller). */
export function fraction(top: bigint, bottom: bigint): Fraction {
  if (bottom === 0n) throw new Error("A fraction needs a lower number other than zero");
  const sign = bottom < 0n ? -1n : 1n;
  const common = greatestCommonDivisor(top < 0n ? -top : top, bottom * sign);
  return { top: (top * sign) / common, bottom: (bottom * sign) / common };
}

/**
 * The simplest fraction a double can stand for: 2/3 for 0.6666666666666666, 77/100 for 0.77. Follows
 * the continued fraction (Hardy & Wright, An Introduction to the Theory of Numbers, ch. 10) until it
 * is within rounding of the number, so that thirds and pounds stay what they were meant to be.
 * Throws on a number that is not finite.
 */
export function fractionOf(number: number): Fraction {
  if (!Number.isFinite(number)) throw new Error(`${number} is not a finite number`);
  if (number < 0) return negated(fractionOf(-number));
  const exact = exactFractionOf(number);
  let [rest, divisor] = [exact.top, exact.bottom];
  let [before, now] = [
    { top: 0n, bottom: 1n },
    { top: 1n, bottom: 0n },
  ];
  while (divisor !== 0n) {
    const digit = rest / divisor;
    const next = {
      top: digit * now.top + before.top,
      bottom: digit * now.bottom + before.bottom,
    };
    if (isWithinRounding(next, number)) return next;
    [before, now] = [now, next];
    [rest, divisor] = [divisor, rest % divisor];
  }
  return exact;
}

export function plus(left: Fraction, right: Fraction): Fraction {
  return fraction(left.top * right.bottom + right.top * left.bottom, left.bottom * right.bottom);
}

export function minus(left: Fraction, right: Fraction): Fraction {
  return plus(left, negated(right));
}

export function times(left: Fraction, right: Fraction): Fraction {
  return fraction(left.top * right.top, left.bottom * right.bottom);
}

/** Throws when `right` is zero (a bug in the caller). */
export function dividedBy(left: Fraction, right: Fraction): Fraction {
  return fraction(left.top * right.bottom, left.bottom * right.top);
}

/** Below zero, zero or above zero as `left` is less than, equal to or more than `right`. */
export function compareFractions(left: Fraction, right: Fraction): number {
  const difference = left.top * right.bottom - right.top * left.bottom;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export function sumOfFractions(fractions: Iterable<Fraction>): Fraction {
  let sum = ZERO;
  for (const part of fractions) sum = plus(sum, part);
  return sum;
}

/** The least whole number that is not below the fraction. */
export function ceilingOf({ top, bottom }: Fraction): bigint {
  const whole = top / bottom;
  return top > 0n && top % bottom !== 0n ? whole + 1n : whole;
}

/** The nearest double. */
export function numberOf({ top, bottom }: Fraction): number {
  const whole = top / bottom;
  return Number(whole) + Number(((top % bottom) * 10n ** 18n) / bottom) / 1e18;
}

/** The least whole number that every one of the whole numbers divides. */
export function leastCommonMultiple(numbers: Iterable<bigint>): bigint {
  let multiple = 1n;
  for (const number of numbers) {
    multiple = (multiple / greatestCommonDivisor(multiple, number)) * number;
  }
  return multiple;
}

function negated({ top, bottom }: Fraction): Fraction {
  return { top: -top, bottom };
}

/** Every double is a whole number over a power of two. */
function exactFractionOf(number: number): Fraction {
  let bottom = 1n;
  let scaled = number;
  while (!Number.isInteger(scaled)) {
    scaled *= 2;
    bottom *= 2n;
  }
  return fraction(BigInt(scaled), bottom);
}

function isWithinRounding(candidate: Fraction, number: number): boolean {
  return Math.abs(numberOf(candidate) - number) <= TOLERANCE * number;
}

function greatestCommonDivisor(left: bigint, right: bigint): bigint {
  let [larger, smaller] = [left, right];
  while (smaller !== 0n) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}
