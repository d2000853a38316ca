import type { Day } from "#lib/calendar/index.ts";
import { fillPlan, type FillerTaste } from "./filler.ts";
import { indexProblem } from "./index-problem.ts";
import type { IndexedProblem } from "./indexed.ts";
import { planOf } from "./plan-state.ts";
import type { Plan, PlanProblem } from "./problem.ts";
import { searchPlan } from "./search.ts";
import type { PlanState } from "./state.ts";

/** Steps of a first plan: a few tenths of a second for a month. */
export const FIRST_STEPS = 60_000;

export type ProposeOptions = {
  readonly seed: string;
  /** Search steps after the plain filling; 0: the plain filling alone. */
  readonly steps?: number;
  /** The search changes only these days; absent: all. */
  readonly days?: readonly Day[];
  /** What the plain filling looks for first; absent: fit and liking. */
  readonly taste?: FillerTaste;
};

/** A plan found without the solver, with what it is worth and how many rules it still breaks. */
export type Proposal = { readonly plan: Plan; readonly points: number; readonly broken: number };

/**
 * Fills the planned weeks at once: plain filling, then seeded local search. The same problem and seed
 * give the same plan. `broken` above 0: no plan without a broken rule was met; ask for the conflict.
 */
export function proposePlan(problem: PlanProblem, options: ProposeOptions): Proposal {
  const state = proposeState(indexProblem(problem), options);
  return { plan: planOf(state), points: state.points, broken: state.broken };
}

/** As `proposePlan`, for one that goes on improving it. */
export function proposeState(indexed: IndexedProblem, options: ProposeOptions): PlanState {
  const state = fillPlan(indexed, options.taste);
  const { seed, steps = FIRST_STEPS, days } = options;
  const numbers = days?.flatMap((date) => indexed.dayIndex.get(date) ?? []);
  searchPlan(state, { seed, steps, ...(numbers ? { days: numbers } : {}) });
  return state;
}
