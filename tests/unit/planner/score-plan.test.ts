import { describe, expect, test } from "vitest";
import { day, mondayOf, type Day } from "#lib/calendar/index.ts";
import {
  AIMS,
  DEFAULT_WEIGHTS,
  proposePlan,
  scorePlan,
  type Plan,
  type PlanProblem,
} from "#lib/planner/index.ts";
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
    expect(aims.liked).not.toBeCloseTo(0, 6);
  });

  test("what echoes more, item or theme, is never worth more", () => {
    const problem = planInstance(TINY);
    const { plan } = proposePlan(problem, { seed: "a", steps: 2000 });
    const raised = (more: number): PlanProblem => ({
      ...problem,
      items: problem.items.map((item) => ({ ...item, echo: item.echo + more })),
      themes: problem.themes.map((theme) => ({ ...theme, echo: theme.echo + more })),
    });
    const points = [0, 0.001, 0.01, 0.2].map((more) => scorePlan(raised(more), plan).aims.fresh);
    expect(points).toEqual(points.toSorted((one, other) => other - one));
    expect(new Set(points).size).toBe(points.length);
  });

  test("each further time a food comes in the plan costs freshness as much as the first such", () => {
    const [days, foods] = [["2026-03-02", "2026-03-10", "2026-03-18"].map(day), ["a", "b", "c"]];
    const problem = oneADay(days, foods);
    const freshOf = (ids: readonly string[]): number =>
      scorePlan(problem, planOf(problem, ids)).aims.fresh;
    const again = freshOf(["a", "b", "a"]) - freshOf(["a", "b", "c"]);
    expect(again).toBeLessThan(0);
    expect(freshOf(["a", "a", "a"]) - freshOf(["a", "b", "c"])).toBeCloseTo(2 * again, 9);
  });

  test("of two foods eaten as much in the mean, the one nobody refuses is liked more", () => {
    const days = [day("2026-03-02")];
    const problem = oneADay(days, ["even", "split"]);
    const acceptance = { even: [0.6, 0.6], split: [0.9, 0.3] };
    const items = problem.items.map((item) => ({
      ...item,
      acceptance: acceptance[item.id as "even" | "split"].map((mean) => ({ mean, sd: 0.1 })),
    }));
    const likedOf = (id: string): number =>
      scorePlan({ ...problem, items }, planOf(problem, [id])).aims.liked;
    expect(likedOf("even")).toBeGreaterThan(likedOf("split"));
  });
});

/** Weeks with one day each and a part with one place: one food a day, each of its own family. */
function oneADay(days: readonly Day[], foods: readonly string[]): PlanProblem {
  const problem = planInstance(TINY);
  const [example] = problem.items;
  if (!example) throw new Error("no item");
  return {
    ...problem,
    weeks: days.map((date) => ({
      ...{ monday: mondayOf(date), days: [{ date, minutesMax: null }] },
      ...{ budgetCents: null, lockedThemeId: null },
    })),
    parts: [{ part: example.part, min: 1, max: 1 }],
    items: foods.map((id) => ({ ...example, id, foodId: id, familyId: id, trickIds: [] })),
  };
}

function planOf({ weeks }: PlanProblem, ids: readonly string[]): Plan {
  return {
    weeks: weeks.map(({ monday, days }, week) => ({
      monday,
      themeId: null,
      lunches: days.map(({ date }) => ({ date, itemIds: [ids[week] ?? ""] })),
    })),
  };
}
