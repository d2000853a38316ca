import type { Day } from "#lib/calendar/index.ts";
import { indexProblem } from "../index-problem.ts";
import { monthProgram } from "../month-program.ts";
import type { PlanProblem } from "../problem.ts";
import { withSession, type Solver } from "../solver.ts";
import { ruleGroups, withoutGroups, type RuleGroup } from "./rule-groups.ts";

/** A smallest set of rules that no plan can keep together, with what relaxing each gives. */
export type Conflict = {
  /** The days it is about: one, a week's, or all. */
  readonly dates: readonly Day[];
  readonly groups: readonly RuleGroup[];
  /** Cheapest first. Rules about health, the school and keeping food are never among them. */
  readonly fixes: readonly Fix[];
};

/** One rule of the conflict relaxed as little as needed. */
export type Fix = {
  readonly group: RuleGroup;
  /** The least minutes or cents with which a plan exists; null: the rule is dropped altogether. */
  readonly needed: number | null;
  /** True when a plan for these days exists then; false: another conflict stands behind this one. */
  readonly isEnough: boolean;
};

/**
 * Why nothing fits, or undefined when something does: in the shortest stretch without a plan (a day, a
 * week, all) one rule after another is dropped for good as long as none exists (deletion filter;
 * Chinneck & Dravnieks, ORSA J. Computing 3, 1991). Every answer is the solver's, none a guess.
 */
export function findConflict(problem: PlanProblem, solver: Solver): Conflict | undefined {
  const stretch = stretches(problem).find((part) => !isFeasible(part, solver));
  if (!stretch) return undefined;
  const groups = ruleGroups(stretch);
  let kept = groups;
  for (const group of groups) {
    const fewer = kept.filter((other) => other !== group);
    const dropped = groups.filter((other) => !fewer.includes(other));
    if (!isFeasible(withoutGroups(stretch, dropped), solver)) kept = fewer;
  }
  const fixes = kept
    .filter(({ isAdjustable }) => isAdjustable)
    .map((group) => fixOf(stretch, group, solver))
    .sort((one, other) => price(one) - price(other));
  const dates = stretch.weeks.flatMap(({ days }) => days.map(({ date }) => date));
  return { dates, groups: kept, fixes };
}

/** True when these rules of a problem, and no others, allow a plan. */
export function allowPlan(
  problem: PlanProblem,
  groups: readonly RuleGroup[],
  solver: Solver,
): boolean {
  const ids = new Set(groups.map(({ id }) => id));
  const dropped = ruleGroups(problem).filter(({ id }) => !ids.has(id));
  return isFeasible(withoutGroups(problem, dropped), solver);
}

/** The problem for some of its days alone; a day by itself leaves the week's money and counts aside. */
export function onlyDays(problem: PlanProblem, dates: readonly Day[]): PlanProblem {
  const weeks = problem.weeks
    .map((week) => ({ ...week, days: week.days.filter(({ date }) => dates.includes(date)) }))
    .filter(({ days }) => days.length > 0);
  const isDay = dates.length === 1 && problem.weeks.flatMap(({ days }) => days).length > 1;
  const part = {
    ...problem,
    weeks,
    locks: problem.locks.filter(({ date }) => dates.includes(date)),
  };
  if (!isDay) return part;
  return {
    ...part,
    weeks: weeks.map((week) => ({ ...week, budgetCents: null })),
    newFoods: { ...part.newFoods, perWeekMin: 0 },
    quotas: part.quotas.filter(({ scope, min }) => scope === "lunch" || min === 0),
  };
}

/** Single days, then weeks, then the whole: the shortest without a plan says most. */
function stretches(problem: PlanProblem): PlanProblem[] {
  const weeks = problem.weeks.map(({ days }) => days.map(({ date }) => date));
  return [...weeks.flat().map((date) => [date]), ...weeks, weeks.flat()].map((dates) =>
    onlyDays(problem, dates),
  );
}

function isFeasible(problem: PlanProblem, solver: Solver): boolean {
  if (!locksStand(problem)) return false;
  const program = monthProgram(problem);
  const solution = withSession(solver, program, (session) => {
    session.setCosts(new Float64Array(program.columnCount));
    return session.solve();
  });
  return solution.status !== "infeasible";
}

/** The model has no place for a locked item that must not be there, so it is asked for first. */
function locksStand(problem: PlanProblem): boolean {
  const { locks, allowed, itemCount } = indexProblem(problem);
  return locks.every(({ day, item }) => allowed[day * itemCount + item] === 1);
}

function fixOf(problem: PlanProblem, group: RuleGroup, solver: Solver): Fix {
  const isEnough = isFeasible(withoutGroups(problem, [group]), solver);
  const limits =
    group.kind === "minutes" || group.kind === "budget" ? limitOf(problem, group) : null;
  if (!isEnough || !limits) return { group, needed: null, isEnough };
  let [low, high] = [limits.now, limits.most];
  // Halving: `low` is known to be too little, `high` to be enough.
  while (high - low > limits.step) {
    const middle = low + limits.step * Math.round((high - low) / 2 / limits.step);
    if (isFeasible(limits.at(middle), solver)) high = middle;
    else low = middle;
  }
  return { group, needed: high, isEnough };
}

/** The limit of minutes or money in a group: what it is, what would surely do, and the problem at another. */
function limitOf(problem: PlanProblem, { id, kind }: RuleGroup) {
  const isIt = (key: string): boolean => id === `${kind}:${key}`;
  const [week] = problem.weeks.filter(
    ({ monday, days }) => isIt(monday) || days.some(({ date }) => isIt(date)),
  );
  const day = kind === "minutes" ? week?.days.find(({ date }) => isIt(date)) : undefined;
  const cells = problem.parts.reduce((sum, { max }) => sum + max, 0);
  const largest = (figures: readonly number[]): number => Math.ceil(Math.max(0, ...figures));
  const step = day ? 1 : 50;
  const now = day ? (day.minutesMax ?? 0) : (week?.budgetCents ?? 0);
  const most = day
    ? cells * largest(problem.items.map(({ minutes }) => minutes))
    : cells * (week?.days.length ?? 0) * largest(problem.items.map(({ costCents }) => costCents));
  const at = (limit: number): PlanProblem => ({
    ...problem,
    weeks: problem.weeks.map((entry) => ({
      ...entry,
      budgetCents: !day && entry === week ? limit : entry.budgetCents,
      days: entry.days.map((other) => (other === day ? { ...other, minutesMax: limit } : other)),
    })),
  });
  return { now, most: now + step * Math.ceil(Math.max(step, most - now) / step), step, at };
}

const EFFORT: Partial<Record<RuleGroup["kind"], number>> = {
  minutes: 0,
  budget: 1,
  ban: 2,
  lock: 3,
  rest: 4,
  new: 5,
  quota: 6,
  season: 7,
  unavailable: 8,
  part: 9,
};

/** What is enough comes first, then what is given up most easily (common practice, no source). */
function price({ group, isEnough }: Fix): number {
  return (isEnough ? 0 : 100) + (EFFORT[group.kind] ?? 10);
}
