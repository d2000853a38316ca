import { daysBetween, type Day } from "#lib/calendar/index.ts";
import { indexProblem } from "../index-problem.ts";
import { stateOf } from "../plan-state.ts";
import type { Plan, PlanProblem } from "../problem.ts";
import { exchanged, type StandIn } from "./stand-ins.ts";
import { scorePlan } from "../score-plan.ts";
import { AIMS } from "../weights.ts";

/** Why an item is not in a plan. */
export type WhyNot =
  | { readonly kind: "unknown" }
  | { readonly kind: "there"; readonly dates: readonly Day[] }
  /** Rules stand against it on every planned day; those of the day with the fewest. */
  | { readonly kind: "ruled-out"; readonly date: Day; readonly rules: readonly string[] }
  /** It could be on this day instead of another item, at this change of points. */
  | {
      readonly kind: "costs";
      readonly date: Day;
      readonly insteadOf: string;
      readonly points: number;
      readonly aims: StandIn["aims"];
    };

/** The rule against an item, or what it would cost where it costs least. */
export function whyNot(problem: PlanProblem, plan: Plan, itemId: string): WhyNot {
  const indexed = indexProblem(problem);
  const item = indexed.itemIndex.get(itemId);
  if (item === undefined || (indexed.partOfItem[item] ?? -1) < 0) return { kind: "unknown" };
  const lunches = plan.weeks.flatMap((week) => week.lunches);
  const there = lunches.filter(({ itemIds }) => itemIds.includes(itemId)).map(({ date }) => date);
  if (there.length > 0) return { kind: "there", dates: there };
  const best = cheapestPlace(problem, plan, itemId);
  if (!best) return ruledOut(problem, plan, itemId);
  const before = scorePlan(problem, plan).aims;
  const after = scorePlan(problem, exchanged(plan, best.date, best.insteadOf, itemId)).aims;
  const aims = AIMS.map((aim) => ({ aim, points: after[aim] - before[aim] }))
    .filter(({ points }) => Math.abs(points) > 0.05)
    .sort((one, other) => one.points - other.points);
  return { kind: "costs", ...best, aims };
}

type PlaceInPlan = { readonly date: Day; readonly insteadOf: string; readonly points: number };

function cheapestPlace(problem: PlanProblem, plan: Plan, itemId: string): PlaceInPlan | undefined {
  const indexed = indexProblem(problem);
  const state = stateOf(indexed, plan);
  const item = indexed.itemIndex.get(itemId) ?? -1;
  const { points, broken } = state;
  let best: PlaceInPlan | undefined;
  for (const [date, day] of indexed.dayIndex) {
    for (const cell of indexed.cellsOfPart[indexed.partOfItem[item] ?? -1] ?? []) {
      const before = state.items[day * indexed.cells.length + cell] ?? -1;
      const insteadOf = problem.items[before]?.id;
      if (insteadOf === undefined) continue;
      state.put(day, cell, item);
      const change = state.points - points;
      if (state.broken <= broken && change > (best?.points ?? -Infinity)) {
        best = { date: date as Day, insteadOf, points: change };
      }
      state.put(day, cell, before);
    }
  }
  return best;
}

function ruledOut(problem: PlanProblem, plan: Plan, itemId: string): WhyNot {
  const days = plan.weeks
    .flatMap((week) => week.lunches)
    .map(({ date }) => ({ date, rules: rulesAgainst(problem, plan, date, itemId) }))
    .sort((one, other) => one.rules.length - other.rules.length);
  const [least] = days;
  if (!least) return { kind: "unknown" };
  const rules =
    least.rules.length > 0
      ? least.rules
      : ["the minutes, the money or the counts of the day and week it would be on"];
  return { kind: "ruled-out", date: least.date, rules };
}

/** The forbidding rules and rests that keep an item off a day, in words. */
function rulesAgainst(problem: PlanProblem, plan: Plan, date: Day, itemId: string): string[] {
  const forbidding = problem.forbidden
    .filter((rule) => rule.itemIds.includes(itemId) && (rule.on?.includes(date) ?? true))
    .map(({ name }) => name);
  const lunches = plan.weeks.flatMap((week) => week.lunches);
  const resting = problem.rests
    .filter((rest) => rest.itemIds.includes(itemId))
    .flatMap((rest) => {
      const planned = lunches
        .filter(({ itemIds }) => itemIds.some((id) => rest.itemIds.includes(id)))
        .map((lunch) => lunch.date)
        .filter((other) => other !== date);
      const near = [...rest.shownOn, ...planned].find(
        (other) => Math.abs(daysBetween(other, date)) < rest.restDays,
      );
      return near === undefined
        ? []
        : [`${rest.name} rests ${rest.restDays} days, and is on ${near}`];
    });
  return [...forbidding, ...resting];
}
