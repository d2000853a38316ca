import { describe, expect, test } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import { eatenShare, estimateAll, logLoss } from "#lib/reactions/index.ts";
import { childMean, lastVerdict, learned, nestedMeans, rawMean } from "#tests/support/rivals.ts";
import {
  DRIFTING,
  HOUSEHOLD,
  simulate,
  SIMULATED_FROM,
  STABLE,
  USUAL_SHAPE,
} from "#tests/support/simulated-series.ts";
import { calibrationOf, differenceOf, heldOut, lossOf } from "#tests/support/held-out.ts";

const SEEDS = Array.from({ length: 16 }, (_, index) => `series-${index}`);
const MODELS = { STABLE, DRIFTING, HOUSEHOLD };
const WEEKS = [4, 12, 52];

const CASES = Object.entries(MODELS).flatMap(([name, model]) =>
  WEEKS.map((weeks) => {
    const cases = SEEDS.map((seed) => heldOut(model, seed, weeks));
    return { name, weeks, cases };
  }),
);
/** The recommended formula, without and with a half-life. */
const FORMULAS = [nestedMeans(Infinity), nestedMeans(240)];

describe("learning a simulated series", () => {
  test.each(CASES)(
    "$name after $weeks weeks: the child’s mean and the last verdict lose by three standard errors",
    ({ cases }) => {
      for (const rival of [childMean, lastVerdict]) {
        const { mean, error } = differenceOf(learned, rival, cases);
        expect(mean + 3 * error).toBeLessThan(0);
      }
    },
  );

  test.each(CASES)(
    "$name after $weeks weeks: the raw mean and the recommended formula lose by one",
    ({ cases }) => {
      for (const rival of [rawMean, ...FORMULAS]) {
        const { mean, error } = differenceOf(learned, rival, cases);
        expect(mean + error).toBeLessThan(0);
      }
    },
  );

  test.each(Object.keys(MODELS))(
    "%s, all ages: the raw mean and the formula lose by three",
    (name) => {
      const cases = CASES.filter((one) => one.name === name).flatMap((one) => one.cases);
      for (const rival of [rawMean, ...FORMULAS]) {
        const { mean, error } = differenceOf(learned, rival, cases);
        expect(mean + 3 * error).toBeLessThan(0);
      }
    },
  );

  test.each(CASES)("$name after $weeks weeks: the truth itself loses least", ({ cases }) => {
    const losses = cases.flatMap(({ future, truth }) =>
      future.map((v) => logLoss(eatenShare(v.eaten ?? 2), truth.get(v) ?? 0.5)),
    );
    const oracle = losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
    expect(lossOf(learned, cases)).toBeGreaterThan(oracle);
  });
});

test.each(WEEKS)(
  "what is foretold after %d weeks comes true within 5 points in every bin",
  (age) => {
    const cases = CASES.filter(({ weeks }) => weeks === age).flatMap((one) => one.cases);
    for (const { points, count } of calibrationOf(cases, 8)) {
      expect(count).toBeGreaterThan(50);
      expect(Math.abs(points)).toBeLessThan(5);
    }
  },
);

test("80 % intervals hold the true share in 70 to 90 % of cases", () => {
  let [inside, count] = [0, 0];
  for (const model of Object.values(MODELS))
    for (const seed of SEEDS.slice(0, 3)) {
      const { past, future, truth, today } = heldOut(model, seed, 52);
      const { of } = estimateAll(past, { today });
      for (const v of future) {
        const { low, high } = of(v.childId, v.foodId, v.familyId);
        const share = truth.get(v) ?? 0.5;
        if (low <= share && share <= high) inside += 1;
        count += 1;
      }
    }
  expect(inside / count).toBeGreaterThan(0.7);
  expect(inside / count).toBeLessThan(0.9);
});

test("with few verdicts the usual strengths are kept, and none is no trouble", () => {
  const today = day("2026-03-11");
  const { of, met } = estimateAll([], { today });
  expect(met).toEqual([]);
  const { estimate, low, high, standing } = of("child", "food", "family");
  expect(estimate).toBeCloseTo(0.6, 9);
  expect(high - low).toBeGreaterThan(0.4);
  expect(standing).toEqual({ kind: "unmet" });
});

test("the order in which verdicts are handed over changes nothing", () => {
  const { verdicts } = simulate(HOUSEHOLD, { ...USUAL_SHAPE, seed: "order", weeks: 6 });
  const today = addDays(SIMULATED_FROM, 100);
  const inOrder = estimateAll(verdicts, { today });
  const reversed = estimateAll([...verdicts].reverse(), { today });
  for (const { childId, foodId, familyId, estimate } of inOrder.met)
    expect(reversed.of(childId, foodId, familyId).estimate).toBeCloseTo(estimate, 10);
});

test("verdicts after today are not known yet", () => {
  const { verdicts } = simulate(HOUSEHOLD, { ...USUAL_SHAPE, seed: "future", weeks: 8 });
  const today = addDays(SIMULATED_FROM, 27);
  const past = verdicts.filter((verdict) => verdict.day <= today);
  expect(estimateAll(verdicts, { today }).met).toEqual(estimateAll(past, { today }).met);
});
