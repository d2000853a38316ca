import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ceilingOf,
  compareFractions,
  dividedBy,
  fraction,
  fractionOf,
  leastCommonMultiple,
  minus,
  numberOf,
  plus,
  times,
} from "#lib/base/index.ts";

const small = fc
  .tuple(fc.bigInt({ min: -999n, max: 999n }), fc.bigInt({ min: 1n, max: 999n }))
  .map(([top, bottom]) => fraction(top, bottom));

describe("fractions", () => {
  test.each([
    [2 / 3, 2n, 3n],
    [0.1 + 0.2, 3n, 10n],
    [-0.77, -77n, 100n],
    [453.59237, 45359237n, 100000n],
    [0, 0n, 1n],
    [12, 12n, 1n],
  ])("the simplest fraction a double stands for: %s", (number, top, bottom) => {
    expect(fractionOf(number)).toEqual({ top, bottom });
  });

  test("any small fraction survives being a double", () => {
    fc.assert(
      fc.property(small, (one) => {
        expect(fractionOf(numberOf(one))).toEqual(one);
      }),
    );
  });

  test("adding, taking away, multiplying and dividing undo each other", () => {
    fc.assert(
      fc.property(small, small, (one, other) => {
        expect(minus(plus(one, other), other)).toEqual(one);
        if (other.top !== 0n) expect(dividedBy(times(one, other), other)).toEqual(one);
      }),
    );
  });

  test("the ceiling is the least whole number that is not below", () => {
    fc.assert(
      fc.property(small, (one) => {
        const whole = fraction(ceilingOf(one), 1n);
        expect(compareFractions(whole, one)).toBeGreaterThanOrEqual(0);
        expect(compareFractions(minus(whole, fraction(1n, 1n)), one)).toBeLessThan(0);
      }),
    );
  });

  test("what cannot be a fraction is a mistake of the caller", () => {
    expect(() => fraction(1n, 0n)).toThrow();
    expect(() => fractionOf(Number.NaN)).toThrow();
    expect(leastCommonMultiple([4n, 6n])).toBe(12n);
  });
});
