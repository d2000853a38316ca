import type { Day } from "#lib/calendar/index.ts";
import { indexProblem } from "../index-problem.ts";
import { stateOf } from "../plan-state.ts";
import type { Plan, PlanProblem } from "../problem.ts";
import { scorePlan, type AimPoints } from "../score-plan.ts";
import { AIMS, type Aim } from "../weights.ts";

/** What could be in an item's place, and what it would change. */
export type StandIn = {
  readonly itemId: string;
  /** Change of the plan's points; below 0: the plan gets worse. */
  readonly points: number;
  /** Only the aims that change, largest change first. */
  readonly aims: readonly { readonly aim: Aim; readonly points: number }[];
};

/** The plan with another item in the place of one. */
export function exchanged(plan: Plan, date: Day, itemId: string, other: string | null): Plan {
  return {
    weeks: plan.weeks.map((week) => ({
      ...week,
      lunches: week.lunches.map((lunch) => {
        if (lunch.date !== date) return lunch;
        const itemIds = lunch.itemIds.flatMap((id) => (id === itemId ? (other ?? []) : id));
        return { ...lunch, itemIds };
      }),
    })),
  };
}

/** Stand-ins for an item of a plan that break no rule the plan keeps, best first. */
export function standIns(
  problem: PlanProblem,
  plan: Plan,
  date: Day,
  itemId: string,
  most = 6,
): StandIn[] {
  const indexed = indexProblem(problem);
  const state = stateOf(indexed, plan);
  const day = indexed.dayIndex.get(date);
  const item = indexed.itemIndex.get(itemId);
  const width = indexed.cells.length;
  const cell = state.items
    .subarray((day ?? 0) * width, ((day ?? 0) + 1) * width)
    .indexOf(item ?? -2);
  if (day === undefined || item === undefined || cell < 0) return [];
  const { points, broken } = state;
  const ranked: { readonly other: number; readonly points: number }[] = [];
  for (const other of indexed.itemsOfPart[indexed.partOfItem[item] ?? -1] ?? []) {
    if (other === item) continue;
    state.put(day, cell, other);
    if (state.broken <= broken) ranked.push({ other, points: state.points - points });
  }
  const before = scorePlan(problem, plan).aims;
  return ranked
    .sort((one, next) => next.points - one.points || one.other - next.other)
    .slice(0, most)
    .flatMap(({ other, points: change }) => {
      const id = problem.items[other]?.id;
      if (id === undefined) return [];
      const after = scorePlan(problem, exchanged(plan, date, itemId, id)).aims;
      return { itemId: id, points: change, aims: changes(before, after) };
    });
}

/** Why an item is there: what the plan would lose without it, aim by aim, and the best stand-in. */
export function reasonsFor(
  problem: PlanProblem,
  plan: Plan,
  date: Day,
  itemId: string,
): { readonly reasons: StandIn["aims"]; readonly runnerUp: StandIn | undefined } {
  const before = scorePlan(problem, exchanged(plan, date, itemId, null)).aims;
  const reasons = changes(before, scorePlan(problem, plan).aims).filter(({ points }) => points > 0);
  const [runnerUp] = standIns(problem, plan, date, itemId, 1);
  return { reasons: reasons.slice(0, 3), runnerUp };
}

function changes(before: AimPoints, after: AimPoints): StandIn["aims"] {
  return AIMS.map((aim) => ({ aim, points: after[aim] - before[aim] }))
    .filter(({ points }) => Math.abs(points) > 0.05)
    .sort((one, other) => Math.abs(other.points) - Math.abs(one.points));
}
