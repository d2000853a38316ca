import fc from "fast-check";
import { expect, test } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import {
  estimateAll,
  isTasting,
  nearestFace,
  shrinkToMean,
  type Eaten,
  type FacePoints,
  type Strengths,
  type Verdict,
} from "#lib/reactions/index.ts";

const START = day("2026-01-05");
const TODAY = addDays(START, 70);

const eaten = fc.constantFrom<Eaten>(0, 1, 2, 3, 4);
const verdict: fc.Arbitrary<Verdict> = fc.record({
  childId: fc.constantFrom("biscuit", "pepper"),
  foodId: fc.constantFrom("a1", "a2", "a3", "b1", "b2", "c1"),
  familyId: fc.constant(""),
  day: fc.integer({ min: 0, max: 60 }).map((offset) => addDays(START, offset)),
  eaten: fc.option(eaten),
  face: fc.option(fc.constantFrom(0, 25, 50, 75, 100)),
});
const series = fc
  .array(verdict, { maxLength: 60 })
  .map((all) => all.map((one) => ({ ...one, familyId: one.foodId.slice(0, 1) })));
const strengths: fc.Arbitrary<Strengths> = fc.record({
  food: fc.double({ min: 0.7, max: 14, noNaN: true }),
  family: fc.double({ min: 1.5, max: 30, noNaN: true }),
  siblings: fc.double({ min: 2, max: 200, noNaN: true }),
  halfLifeDays: fc.constantFrom(60, 240, Infinity),
  day: fc.double({ min: 0, max: 0.4, noNaN: true }),
  face: fc.double({ min: 0, max: 0.6, noNaN: true }),
  precision: fc.double({ min: 0.3, max: 6, noNaN: true }),
  surest: fc.constantFrom(4, 30, 1000),
});

test("every interval contains its estimate and stays within 0 and 1", () => {
  fc.assert(
    fc.property(series, strengths, (verdicts, given) => {
      const { met } = estimateAll(verdicts, { today: TODAY, strengths: given });
      for (const { estimate, low, high } of met) {
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(estimate);
        expect(high).toBeGreaterThanOrEqual(estimate);
        expect(high).toBeLessThanOrEqual(1);
      }
    }),
  );
});

test("fitted strengths, too, give intervals that contain the estimate", () => {
  fc.assert(
    fc.property(series, (verdicts) => {
      for (const { estimate, low, high, history } of estimateAll(verdicts, { today: TODAY }).met) {
        expect(low <= estimate && estimate <= high).toBe(true);
        expect(history?.tastings).toBeLessThanOrEqual(history?.offers ?? 0);
      }
    }),
    { numRuns: 30 },
  );
});

test("intervals narrow when the same share is seen four times as often", () => {
  fc.assert(
    fc.property(eaten, strengths, fc.integer({ min: 4, max: 8 }), (share, given, times) => {
      const steady = {
        ...given,
        halfLifeDays: Infinity,
        surest: 1000,
        food: Math.min(4, given.food),
      };
      const width = (count: number): number => {
        const verdicts = Array.from({ length: count }, (_, index) => ({
          ...{ childId: "pepper", foodId: "kiwi", familyId: "kiwi", eaten: share, face: null },
          day: addDays(TODAY, -index),
        }));
        const { low, high } = estimateAll(verdicts, { today: TODAY, strengths: steady }).of(
          "pepper",
          "kiwi",
          "kiwi",
        );
        return high - low;
      };
      expect(width(times * 4)).toBeLessThan(width(times));
    }),
  );
});

test("more eaten of a food never lowers its estimate", () => {
  fc.assert(
    fc.property(
      series,
      strengths,
      fc.nat(),
      fc.constantFrom(1, 2, 4),
      (verdicts, given, at, more) => {
        const chosen = verdicts[at % Math.max(1, verdicts.length)];
        if (!chosen || chosen.eaten === null) return;
        const raised = { ...chosen, eaten: Math.min(4, chosen.eaten + more) as Eaten };
        const of = (all: readonly Verdict[]): number =>
          estimateAll(all, { today: TODAY, strengths: given }).of(
            chosen.childId,
            chosen.foodId,
            chosen.familyId,
          ).estimate;
        const after = of(verdicts.map((one) => (one === chosen ? raised : one)));
        expect(after).toBeGreaterThanOrEqual(of(verdicts) - 1e-9);
      },
    ),
    { numRuns: 400 },
  );
});

test("tastings are the offers of which something was eaten", () => {
  fc.assert(
    fc.property(series, (verdicts) => {
      const { met } = estimateAll(verdicts, { today: TODAY });
      for (const { childId, foodId, history } of met) {
        const own = verdicts.filter((one) => one.childId === childId && one.foodId === foodId);
        expect(history?.tastings).toBe(own.filter(isTasting).length);
      }
    }),
    { numRuns: 30 },
  );
});

test("shrinking keeps the order of equally sure values and never passes the mean", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 4, maxLength: 20 }),
      fc.double({ min: 0.001, max: 1, noNaN: true }),
      (values, variance) => {
        const shrunk = shrinkToMean(values.map((value) => ({ value, variance })));
        values.forEach((value, index) => {
          const after = shrunk.values[index] ?? 0;
          expect(Math.abs(after - shrunk.mean)).toBeLessThanOrEqual(
            Math.abs(value - shrunk.mean) + 1e-9,
          );
          expect((after - shrunk.mean) * (value - shrunk.mean)).toBeGreaterThanOrEqual(-1e-12);
        });
      },
    ),
  );
});

test("the nearest face is never further than half a step", () => {
  fc.assert(
    fc.property(
      fc.constantFrom<FacePoints>(3, 5, 7),
      fc.double({ min: 0, max: 100, noNaN: true }),
      (points, value) => {
        const { value: nearest } = nearestFace(value, points);
        expect(Math.abs(nearest - value)).toBeLessThanOrEqual(50 / (points - 1) + 1e-9);
      },
    ),
  );
});
