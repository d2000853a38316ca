import { expect, test } from "vitest";
import {
  allThemeBounds,
  lpText,
  monthProgram,
  placeAsAsked,
  planMonth,
  scorePlan,
  USUAL_MONTH,
  type Mate,
  type Placing,
  withSession,
  type Plan,
  type PlannedLunch,
  type PlanProblem,
  type PlanStep,
} from "#lib/planner/index.ts";
import { loadSolver } from "#lib/use-cases/solver/highs-solver.ts";
import { brokenRules } from "../../support/check-plan.ts";
import { glpkOptimum } from "../../support/glpk-optimum.ts";
import { planInstance, TINY } from "../../support/plan-instance.ts";
import { readLp } from "../../support/read-lp.ts";

const solver = await loadSolver();
const SEEDS = ["1", "2", "3", "4", "5", "6"];
const SMALL = { ...TINY, items: 20, themes: 3 };
const FORTNIGHT = { ...TINY, items: 120, weeks: 2, daysPerWeek: 3, themes: 4 };

function optimum(problem: PlanProblem): number {
  const { status, objective } = withSession(solver, monthProgram(problem), (session) =>
    session.solve(),
  );
  return status === "optimal" ? objective : -Infinity;
}

/** Every plan there is, judged by the independent checker and the score; the best one's points. */
function bestOfAll(problem: PlanProblem): number {
  const lunchesOn = (date: PlannedLunch["date"]): PlannedLunch[] =>
    problem.parts
      .reduce<string[][]>(
        (lunches, { part, min }) => {
          const ids = problem.items.filter((item) => item.part === part).map(({ id }) => id);
          const choices = [...ids.map((id) => [id]), ...(min === 0 ? [[]] : [])];
          return lunches.flatMap((lunch) => choices.map((choice) => [...lunch, ...choice]));
        },
        [[]],
      )
      .map((itemIds) => ({ date, itemIds }));
  const [week] = problem.weeks;
  if (!week) throw new Error("no week");
  const themes = [null, ...problem.themes.map(({ id }) => id)];
  let plans: PlannedLunch[][] = [[]];
  for (const { date } of week.days) {
    plans = plans.flatMap((plan) => lunchesOn(date).map((lunch) => [...plan, lunch]));
  }
  return themes
    .flatMap((themeId) =>
      plans.map((lunches): Plan => ({ weeks: [{ monday: week.monday, themeId, lunches }] })),
    )
    .filter((plan) => brokenRules(problem, plan).length === 0)
    .reduce((best, plan) => Math.max(best, scorePlan(problem, plan).points), -Infinity);
}

function stepsOf(problem: PlanProblem, seed: string): PlanStep[] {
  const steps: PlanStep[] = [];
  planMonth(problem, solver, { ...USUAL_MONTH, seed }, (step) => steps.push(step));
  return steps;
}

/** Seeds at which a plan exists that keeps every rule, and few enough plans to try them all. */
const COUNTABLE = { ...TINY, items: 14 };
const SOLVABLE = ["4", "6", "8"];

test.each(SOLVABLE)(
  "the program's optimum is the best of all plans, tried one by one (%s)",
  (seed) => {
    const problem = planInstance({ ...COUNTABLE, seed });
    const best = bestOfAll(problem);
    expect(best).toBeGreaterThan(-Infinity);
    expect(optimum(problem)).toBeCloseTo(best, 6);
  },
);

test("where every plan breaks a rule, the program has none either", () => {
  const problem = planInstance(TINY);
  expect(bestOfAll(problem)).toBe(-Infinity);
  expect(optimum(problem)).toBe(-Infinity);
});

test("the program written out as text has the same optimum for a second solver", async () => {
  for (const seed of SEEDS) {
    const program = monthProgram(planInstance({ ...SMALL, seed }));
    const first = withSession(solver, program, (session) => session.solve());
    const second = await glpkOptimum(readLp(lpText(program)));
    if (first.status === "infeasible") expect(second).toBe(-Infinity);
    else expect(second).toBeCloseTo(first.objective, 4);
  }
});

test.each(["1", "3"])("the month's last plan stands, and no bound is below it (%s)", (seed) => {
  const problem = planInstance({ ...FORTNIGHT, seed });
  const steps = stepsOf(problem, "a");
  const last = steps.findLast((step) => step.kind === "plan");
  const themes = steps.find((step) => step.kind === "themes");
  if (!last || !themes) throw new Error("no plan or no themes");
  expect(last.broken).toBe(0);
  expect(brokenRules(problem, last.plan)).toEqual([]);
  const bounds = steps.flatMap((step) => (step.kind === "bound" ? [step.bound] : []));
  expect(bounds.length).toBeGreaterThan(0);
  const bound = Math.min(...bounds);
  expect(bound).toBeLessThan(themes.bound - 1);
  expect(last.points).toBeLessThanOrEqual(bound + 1e-6);
  expect(last.points).toBeGreaterThan(0.985 * bound);
});

/** Two short weeks that share rests and themes: the weeks' ties matter, and the optimum is still found. */
const TWO_WEEKS = { ...TINY, items: 40, weeks: 2, themes: 4 };
const TWO_WEEKS_SOLVABLE = ["2", "4", "7", "8"];

test("no plan of any themes beats the bound over all themes", () => {
  const questions = [
    ...SOLVABLE.map((seed) => planInstance({ ...COUNTABLE, seed })),
    ...TWO_WEEKS_SOLVABLE.map((seed) => planInstance({ ...TWO_WEEKS, seed })),
  ];
  for (const problem of questions) {
    const best = problem.weeks.length === 1 ? bestOfAll(problem) : optimum(problem);
    expect(best).toBeGreaterThan(-Infinity);
    const told = [...allThemeBounds(problem, solver, { looksMax: 20 })];
    expect(told.at(-1)).toBeGreaterThanOrEqual(best - 1e-6);
    expect(told).toEqual([...told].sort((one, other) => other - one));
  }
  // It must also say more than the relaxation that mixes themes.
  const problem = planInstance({ ...FORTNIGHT, themes: 8 });
  const all = [...allThemeBounds(problem, solver, { looksMax: 20 })].at(-1);
  const mixed = withSession(solver, monthProgram(problem), (session) => session.solve(), true);
  expect(all).toBeLessThan(mixed.objective - 1);
});

test("a bound for given themes holds for the best plan with them", () => {
  let compared = 0;
  for (const seed of TWO_WEEKS_SOLVABLE) {
    const problem = planInstance({ ...TWO_WEEKS, seed });
    for (const [one, other] of [
      [0, 1],
      [2, 3],
    ] as const) {
      const ids = [problem.themes[one]?.id ?? null, problem.themes[other]?.id ?? null];
      const weeks = problem.weeks.map((week, place) => ({
        ...week,
        lockedThemeId: ids[place] ?? null,
      }));
      const best = optimum({ ...problem, weeks });
      if (best > -Infinity) compared += 1;
      const steps = stepsOf({ ...problem, weeks }, "a");
      const bounds = steps.flatMap((step) => (step.kind === "bound" ? [step.bound] : []));
      if (best > -Infinity) expect(bounds.length).toBeGreaterThan(0);
      for (const bound of bounds) expect(bound).toBeGreaterThanOrEqual(best - 1e-6);
    }
  }
  expect(compared).toBeGreaterThan(3);
});

test("the same question and seed give the same steps", () => {
  const problem = planInstance(FORTNIGHT);
  expect(stepsOf(problem, "a")).toEqual(stepsOf(problem, "a"));
});

test("a mate that places some of the items gives the steps that one thread alone would", () => {
  const problem = planInstance(FORTNIGHT);
  const asked: Placing[] = [];
  const mate: Mate = {
    start: (placing) => void asked.push(structuredClone(placing)),
    collect: () => {
      const placing = asked.shift();
      return placing ? placeAsAsked(problem, solver, placing, () => undefined) : null;
    },
  };
  const paired: PlanStep[] = [];
  planMonth(problem, solver, { ...USUAL_MONTH, seed: "a", mate }, (step) => paired.push(step));
  expect(paired).toEqual(stepsOf(problem, "a"));
});

test("dropping a rule never worsens the optimum, a ban never improves it", () => {
  let bound = 0;
  for (const seed of SEEDS.slice(0, 3)) {
    const problem = planInstance({ ...SMALL, seed });
    const usual = optimum(problem);
    const without = <Key extends "forbidden" | "rests" | "quotas">(key: Key, place: number) => ({
      ...problem,
      [key]: problem[key].filter((_, other) => other !== place),
    });
    for (const key of ["forbidden", "quotas"] as const) {
      problem[key].forEach((_, place) => {
        const looser = optimum(without(key, place));
        expect(looser).toBeGreaterThanOrEqual(usual - 1e-6);
        if (looser > usual + 1e-6) bound += 1;
      });
    }
    problem.rests.slice(0, 6).forEach((_, place) => {
      expect(optimum(without("rests", place))).toBeGreaterThanOrEqual(usual - 1e-6);
    });
    const steps = stepsOf(problem, "a").findLast((step) => step.kind === "plan");
    const itemIds = steps?.plan.weeks[0]?.lunches[0]?.itemIds.slice(0, 1) ?? [];
    const ban = { id: "ban", kind: "ban", name: "your ban", itemIds, on: null } as const;
    const banned = optimum({ ...problem, forbidden: [...problem.forbidden, ban] });
    expect(banned).toBeLessThanOrEqual(usual + 1e-6);
    if (banned < usual - 1e-6) bound += 1;
  }
  // Laws that nothing in the sample tests would say nothing.
  expect(bound).toBeGreaterThan(1);
});
