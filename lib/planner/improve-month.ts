import { improveWeek } from "./improve.ts";
import {
  countsOf,
  improveItems,
  pairsOfWeeks,
  solveItems,
  type ItemsSolution,
} from "./improve-items.ts";
import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { placeItems } from "./place-items.ts";
import { FIRST_STEPS, proposeState } from "./propose.ts";
import { chooseThemes, type RankedTheme } from "./rank-themes.ts";
import { searchPlan } from "./search.ts";
import { withSession, type Solver, type SolverSession } from "./solver.ts";
import type { PlanState } from "./state.ts";
import { promisingItems, weekModel, type WeekItems } from "./week-counts.ts";

/** A step on the way: a better plan, or the themes and a first bound. */
type MonthStep =
  | { readonly kind: "plan"; readonly state: PlanState }
  | {
      readonly kind: "themes";
      readonly themes: Int32Array;
      readonly bound: number;
      readonly ranked: readonly RankedTheme[];
    };

/** How hard to try, in nodes of the solver's trees and steps of walks: every machine gets the same plans. */
export type MonthOptions = {
  readonly seed: string;
  /** For the items of all weeks at once, and of two weeks. */
  readonly itemNodesMax: number;
  /** For the lunches of one week. */
  readonly weekNodesMax: number;
  /** Rounds over all weeks; each ends the search when it finds nothing. */
  readonly roundsMax: number;
};

export const USUAL_MONTH: Omit<MonthOptions, "seed"> = {
  itemNodesMax: 1,
  weekNodesMax: 1,
  roundsMax: 100,
};

/** Losses up to which an item is worth trying on a day, in points, round by round. */
const LOSSES = [1.5, 4, Infinity];

/** What a run knows so far. */
type Climb = {
  readonly indexed: IndexedProblem;
  readonly options: MonthOptions;
  readonly tell: (step: MonthStep) => void;
  best: PlanState;
};

/**
 * Plans a month ever better and tells each step: a first plan by search; themes by linear programs;
 * which items come in which week by the week model, first all weeks, then two at a time; their days by
 * exchanges; then the lunches of one week after another by the day model. The same problem and options
 * give the same steps, so that a run cut short has just walked less far. Themes stay after their step.
 */
export function improveMonth(
  indexed: IndexedProblem,
  solver: Solver,
  options: MonthOptions,
  tell: (step: MonthStep) => void,
): void {
  const best = proposeState(indexed, { seed: options.seed, steps: FIRST_STEPS });
  tell({ kind: "plan", state: best });
  const climb: Climb = { indexed, options, tell, best };
  const { themes, bound, ranked } = chooseThemes(indexed, solver);
  tell({ kind: "themes", themes, bound, ranked });
  const model = weekModel(indexed, themes);
  const relaxed = withSession(solver, model.program, (session) => session.solve(), true);
  const promisingUpTo = (loss: number): WeekItems => {
    const lossMax = relaxed.status === "optimal" ? loss : Infinity;
    return promisingItems(indexed, model, relaxed.columnDuals, lossMax);
  };
  dress(climb, themes, promisingUpTo(LOSSES[0] ?? Infinity));
  withSession(solver, model.program, (session) => {
    let items = findItems(climb, session, model, themes);
    for (let round = 0; round < options.roundsMax; round += 1) {
      const before = climb.best.worth;
      betterWeeks(climb, solver, promisingUpTo(LOSSES[round] ?? Infinity));
      if (items) items = betterItems(climb, session, model, themes, items);
      if (climb.best.worth <= before + 1e-6 && round >= LOSSES.length - 1) return;
    }
  });
}

function offer(climb: Climb, next: PlanState | undefined): boolean {
  if (next === undefined || next.worth <= climb.best.worth + 1e-6) return false;
  climb.best = next;
  climb.tell({ kind: "plan", state: next });
  return true;
}

/** The first plan under the chosen themes, searched again among what promises well. */
function dress(climb: Climb, themes: Int32Array, promising: WeekItems): void {
  const { seed } = climb.options;
  const plan = climb.best.copy();
  themes.forEach((theme, week) => plan.setTheme(week, theme));
  searchPlan(plan, { seed, steps: 200_000, keepThemes: true, promising, heat: [4, 0.25] });
  // The chosen themes win in the end: go on from them unless rules stand against it.
  if (plan.broken <= climb.best.broken && !offer(climb, plan)) climb.best = plan;
}

/** The items of all weeks at once; each better choice is put on its days as soon as it is met. */
function findItems(
  climb: Climb,
  session: SolverSession,
  model: PlanModel,
  themes: Int32Array,
): ItemsSolution | undefined {
  const limits = { nodesMax: climb.options.itemNodesMax };
  const onDays = (items: ItemsSolution, tries: number, steps: number): void => {
    if (items.objective <= climb.best.worth) return;
    const counts = countsOf(climb.indexed, model, items);
    for (let number = 0; number < tries; number += 1) {
      const seed = `${climb.options.seed} ${number}`;
      offer(climb, placeItems(climb.indexed, themes, counts, { seed, steps, heat: [60, 1] }));
    }
  };
  const found = solveItems(session, limits, (items) => onDays(items, 1, 60_000));
  if (found) onDays(found, 2, 300_000);
  return found;
}

/** Two weeks' items at a time; what changed finds its day among what stays. */
function betterItems(
  climb: Climb,
  session: SolverSession,
  model: PlanModel,
  themes: Int32Array,
  known: ItemsSolution,
): ItemsSolution {
  const { indexed, options } = climb;
  let items = known;
  for (const weeks of pairsOfWeeks(indexed.weekCount)) {
    const limits = { nodesMax: options.itemNodesMax };
    const next = improveItems(session, model, items, weeks, limits);
    if (!next) continue;
    items = next;
    const counts = countsOf(indexed, model, items);
    const seed = `${options.seed} ${weeks.join()} ${items.objective}`;
    const from = climb.best;
    offer(climb, placeItems(indexed, themes, counts, { seed, steps: 200_000, from, heat: [8, 1] }));
    offer(climb, placeItems(indexed, themes, counts, { seed, steps: 300_000, heat: [60, 1] }));
  }
  return items;
}

/** The lunches of one week after another. */
function betterWeeks(climb: Climb, solver: Solver, promising: WeekItems): void {
  const limits = { nodesMax: climb.options.weekNodesMax };
  for (let week = 0; week < climb.indexed.weekCount; week += 1) {
    offer(climb, improveWeek(climb.best, week, solver, limits, promising));
  }
}
