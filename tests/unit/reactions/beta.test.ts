import { describe, expect, test } from "vitest";
import {
  betaBinomialLogLikelihood,
  betaFromMoments,
  betaQuantile,
  fitBetaPrior,
  shrinkToMean,
  updateBeta,
} from "#lib/reactions/index.ts";
import { BATTERS, PUBLISHED as BATTING } from "./batting.published.ts";
import { PUBLISHED, RATS } from "./rats.published.ts";

const meanOf = ({ alpha, beta }: { alpha: number; beta: number }): number => alpha / (alpha + beta);

describe("beta-binomial against the rat tumours", () => {
  test("there are 70 experiments", () => {
    expect(RATS).toHaveLength(70);
  });
  test("moments give the published beta", () => {
    const prior = betaFromMoments(RATS);
    expect(prior).not.toBeNull();
    if (!prior) return;
    const mean = meanOf(prior);
    expect(mean).toBeCloseTo(PUBLISHED.mean, 3);
    const deviation = Math.sqrt((mean * (1 - mean)) / (prior.alpha + prior.beta + 1));
    expect(deviation).toBeCloseTo(PUBLISHED.deviation, 3);
    expect(prior.alpha).toBeCloseTo(PUBLISHED.moments.alpha, 1);
    expect(Math.abs(prior.beta - PUBLISHED.moments.beta)).toBeLessThan(0.05);
  });
  test("experiment 71 is drawn to the published posterior", () => {
    const posterior = updateBeta(PUBLISHED.moments, { hits: 4, trials: 14 });
    expect(posterior.alpha).toBeCloseTo(PUBLISHED.experiment71.alpha, 9);
    expect(posterior.beta).toBeCloseTo(PUBLISHED.experiment71.beta, 9);
    const prior = betaFromMoments(RATS) ?? PUBLISHED.moments;
    const unrounded = updateBeta(prior, { hits: 4, trials: 14 });
    expect(meanOf(unrounded)).toBeCloseTo(PUBLISHED.experiment71.mean, 2);
  });
  test("the likeliest prior is the published one, and a peak", () => {
    const prior = fitBetaPrior(RATS);
    expect(prior?.alpha).toBeCloseTo(PUBLISHED.likeliest.alpha, 3);
    expect(prior?.beta).toBeCloseTo(PUBLISHED.likeliest.beta, 2);
    const peak = betaBinomialLogLikelihood(prior ?? { alpha: 1, beta: 1 }, RATS);
    for (const [alpha, beta] of [
      [2.2, 14.08],
      [2.4, 14.08],
      [2.3, 13.5],
      [2.3, 14.7],
    ] as const)
      expect(betaBinomialLogLikelihood({ alpha, beta }, RATS)).toBeLessThan(peak);
  });
  test("rates that do not vary give no prior", () => {
    expect(fitBetaPrior([{ hits: 1, trials: 2 }])).toBeNull();
    expect(fitBetaPrior(Array.from({ length: 9 }, () => ({ hits: 2, trials: 4 })))).toBeNull();
  });
});

describe("shrinkage against the batting averages", () => {
  const early = BATTERS.map(({ hits }) => hits / 45);
  const variance = (0.2654 * (1 - 0.2654)) / 45;
  const shrunk = shrinkToMean(early.map((value) => ({ value, variance })));
  test("the mean and the factor are the published ones", () => {
    expect(shrunk.mean).toBeCloseTo(BATTING.mean, 3);
    expect(Math.abs((shrunk.kept[0] ?? 0) - BATTING.kept)).toBeLessThan(0.0015);
    expect(shrunk.values[0]).toBeCloseTo(BATTING.best, 3);
  });
  test("total squared error over the rest of the season falls about 3.5 times", () => {
    const error = (of: readonly number[]): number =>
      BATTERS.reduce((sum, { season }, i) => sum + ((of[i] ?? 0) - season) ** 2, 0);
    expect(Math.abs(error(early) / error(shrunk.values) - BATTING.errorRatio)).toBeLessThan(0.1);
  });
  test("three values or fewer are left as they are", () => {
    const few = [0.1, 0.5, 0.9].map((value) => ({ value, variance: 1 }));
    expect(shrinkToMean(few).values).toEqual([0.1, 0.5, 0.9]);
  });
});

describe("beta quantiles", () => {
  // SciPy 1.17.1, scipy.stats.beta.ppf.
  test.each([
    [0.1, 2.4, 14.3, 0.04871730684493512],
    [0.9, 2.4, 14.3, 0.2583840161579604],
    [0.025, 0.5, 0.5, 0.001541333133436012],
    [0.5, 1.4, 8.6, 0.11601611197273373],
    [0.1, 0.3, 6, 5.722707681761686e-5],
    [0.9, 40, 3.5, 0.966230233244588],
    [0.95, 8, 2, 0.9589768324930035],
  ])("p %d of Beta(%d, %d) is SciPy's", (p, alpha, beta, value) => {
    expect(betaQuantile(p, { alpha, beta }) / value).toBeCloseTo(1, 9);
  });
  // Upper 5 % points of F, NIST/SEMATECH e-Handbook of Statistical Methods, §1.3.6.7.3 (from memory);
  // x = ν₁F / (ν₁F + ν₂) is the 95 % point of Beta(ν₁ / 2, ν₂ / 2).
  test.each([
    [1, 10, 4.965],
    [2, 10, 4.103],
    [5, 10, 3.326],
    [10, 20, 2.348],
  ])("F with %d and %d degrees: %d", (first, second, f) => {
    const x = betaQuantile(0.95, { alpha: first / 2, beta: second / 2 });
    expect((second * x) / (first * (1 - x))).toBeCloseTo(f, 3);
  });
});
