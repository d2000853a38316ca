import { expect, test } from "vitest";
import {
  allowPlan,
  exchanged,
  findConflict,
  onlyDays,
  proposePlan,
  reasonsFor,
  scorePlan,
  standIns,
  whyNot,
  type PlanProblem,
} from "#lib/planner/index.ts";
import { loadSolver } from "#lib/use-cases/solver/highs-solver.ts";
import { brokenRules } from "../../support/check-plan.ts";
import { planInstance, TINY } from "../../support/plan-instance.ts";

const solver = await loadSolver();
const ROOMY = { ...TINY, items: 45 };

/** Questions nobody can answer, each for another reason. */
function unanswerable(seed: string): PlanProblem[] {
  const open = planInstance({ ...ROOMY, seed });
  const mains = open.items.filter(({ part }) => part === "main");
  const ids = mains.map(({ id }) => id);
  const half = Math.floor(ids.length / 2);
  const rule = { name: "Child 1 avoids sesame", on: null } as const;
  const tight = open.weeks.map((week) => ({
    ...week,
    days: week.days.map((day) => ({ ...day, minutesMax: 0.5 })),
  }));
  return [
    {
      ...open,
      forbidden: [
        { ...rule, id: "a", kind: "allergen", itemIds: ids.slice(0, half) },
        { ...rule, id: "b", kind: "season", name: "out of season", itemIds: ids.slice(half) },
      ],
    },
    { ...open, weeks: tight, items: open.items.map((item) => ({ ...item, minutes: 2 })) },
    { ...open, weeks: open.weeks.map((week) => ({ ...week, budgetCents: 10 })) },
    {
      ...open,
      forbidden: [{ ...rule, id: "a", kind: "allergen", itemIds: ids.slice(0, 1) }],
      locks: [{ date: open.weeks[0]?.days[0]?.date as never, itemId: ids[0] ?? "" }],
    },
  ];
}

test.each(["1", "2", "3"])(
  "every conflict set is infeasible, every proper subset of it feasible (%s)",
  (seed) => {
    for (const problem of unanswerable(seed)) {
      const conflict = findConflict(problem, solver);
      if (!conflict) throw new Error("a question nobody can answer was answered");
      const part = onlyDays(problem, conflict.dates);
      expect(allowPlan(part, conflict.groups, solver)).toBe(false);
      for (const group of conflict.groups) {
        const fewer = conflict.groups.filter((other) => other !== group);
        expect(allowPlan(part, fewer, solver)).toBe(true);
      }
      const kinds = conflict.fixes.map(({ group }) => group.kind);
      for (const kind of ["allergen", "avoidance", "school", "temperature", "choking"] as const) {
        expect(kinds).not.toContain(kind);
      }
    }
  },
);

test("a fix names the least money with which a plan exists", () => {
  const seed = ["1", "2", "3", "4", "5", "6", "7", "8"].find(
    (one) => proposePlan(planInstance({ ...ROOMY, seed: one }), { seed: "a" }).broken === 0,
  );
  const [, , problem] = unanswerable(seed ?? "");
  if (!problem) throw new Error("no problem");
  const fix = findConflict(problem, solver)?.fixes.find(({ group }) => group.kind === "budget");
  if (!fix?.needed) throw new Error("no fix with money");
  const withMoney = (cents: number): PlanProblem => ({
    ...problem,
    weeks: problem.weeks.map((week) => ({ ...week, budgetCents: cents })),
  });
  expect(findConflict(withMoney(fix.needed), solver)).toBeUndefined();
  expect(findConflict(withMoney(fix.needed - 50), solver)).toBeDefined();
});

test("what can be planned has no conflict", () => {
  for (const seed of ["1", "2", "3"]) {
    const problem = planInstance({ ...ROOMY, seed });
    const { broken } = proposePlan(problem, { seed });
    const conflict = findConflict(problem, solver);
    if (broken === 0) expect(conflict).toBeUndefined();
  }
});

const month = planInstance({ ...TINY, items: 120, weeks: 2, daysPerWeek: 3, themes: 4 });
const { plan, points } = proposePlan(month, { seed: "a" });
// The item with most stand-ins.
const [most] = plan.weeks
  .flatMap((week) => week.lunches)
  .flatMap((lunch) => lunch.itemIds.map((itemId) => ({ date: lunch.date, itemId })))
  .map((place) => ({ ...place, found: standIns(month, plan, place.date, place.itemId, 50) }))
  .sort((one, other) => other.found.length - one.found.length);
if (!most) throw new Error("an empty plan");
const { date, itemId: chosen, found } = most;

test("a stand-in changes the points by what it says and breaks nothing", () => {
  expect(found.length).toBeGreaterThan(3);
  const change = found.map((entry) => entry.points);
  expect(change).toEqual([...change].sort((one, other) => other - one));
  for (const standIn of found) {
    const other = exchanged(plan, date, chosen, standIn.itemId);
    expect(scorePlan(month, other).points - points).toBeCloseTo(standIn.points, 6);
    expect(brokenRules(month, other)).toEqual([]);
    expect(standIn.aims.reduce((sum, aim) => sum + aim.points, 0)).toBeCloseTo(standIn.points, 0);
  }
});

test("reasons are gains, and the runner-up is the best stand-in", () => {
  const { reasons, runnerUp } = reasonsFor(month, plan, date, chosen);
  expect(reasons.length).toBeGreaterThan(0);
  expect(reasons.every((reason) => reason.points > 0)).toBe(true);
  expect(runnerUp).toEqual(standIns(month, plan, date, chosen, 1)[0]);
});

test("what is not chosen is ruled out by name, or has its price", () => {
  const kinds = month.items.map(({ id }) => ({ id, answer: whyNot(month, plan, id) }));
  for (const { id, answer } of kinds) {
    if (answer.kind !== "costs") continue;
    const other = exchanged(plan, answer.date, answer.insteadOf, id);
    expect(brokenRules(month, other)).toEqual([]);
    expect(scorePlan(month, other).points - points).toBeCloseTo(answer.points, 6);
  }
  const sesame = month.forbidden[0];
  const avoided = kinds.find(({ id }) => sesame?.itemIds.includes(id))?.answer;
  expect(avoided?.kind === "ruled-out" && avoided.rules).toContain("Child 1 avoids sesame");
  expect(new Set(kinds.map(({ answer }) => answer.kind))).toEqual(
    new Set(["costs", "ruled-out", "there"]),
  );
  expect(whyNot(month, plan, "nothing").kind).toBe("unknown");
});
