import { describe, expect, test } from "vitest";
import { AIMS, DEFAULT_WEIGHTS, proposePlan, scorePlan } from "#lib/planner/index.ts";
import { MONTH, planInstance, TINY } from "../../support/plan-instance.ts";

describe("the score of a plan", () => {
  test.each([
    ["a month", MONTH],
    ["two days", TINY],
  ])("adds up, aim by aim, to the points the search counted step by step (%s)", (_, size) => {
    const problem = planInstance(size);
    const { plan, points, broken } = proposePlan(problem, { seed: "a", steps: 5000 });
    const score = scorePlan(problem, plan);
    expect(score.points).toBeCloseTo(points, 6);
    expect(score.broken).toBe(broken);
  });

  test("an aim switched off earns and costs nothing", () => {
    const weights = { ...DEFAULT_WEIGHTS, shops: 0, colours: 0, fresh: 0 };
    const problem = { ...planInstance(TINY), weights };
    const { plan } = proposePlan(problem, { seed: "a", steps: 2000 });
    const { aims } = scorePlan(problem, plan);
    expect(AIMS.filter((aim) => weights[aim] === 0).map((aim) => aims[aim] + 0)).toEqual([0, 0, 0]);
    expect(aims.liked).toBeGreaterThan(0);
  });
});
