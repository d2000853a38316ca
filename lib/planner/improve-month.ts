import type { IndexedProblem } from "./indexed.ts";
import { improveWithin, openMonth, type MonthDays } from "./month-days.ts";
import { neighbourhoodOf, quickOnes, slowOnes, type Freed } from "./neighbourhoods.ts";
import { outlineMonth, type Outline } from "./outline.ts";
import { FIRST_STEPS, proposeState } from "./propose.ts";
import { chooseThemes, type RankedTheme } from "./rank-themes.ts";
import { rollWeeks } from "./roll-weeks.ts";
import { searchPlan } from "./search.ts";
import { withSession, type Solver } from "./solver.ts";
import type { PlanState } from "./state.ts";
import { countItems, weekModel } from "./week-counts.ts";

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
  /** For each program. */
  readonly nodesMax: number;
  /** Rounds over all neighbourhoods; a round that finds nothing ends the search. */
  readonly roundsMax: number;
};

export const USUAL_MONTH: Omit<MonthOptions, "seed"> = { nodesMax: 1, roundsMax: 100 };

/** Steps of the search among what the outline leaves: a tenth of a second. */
const DRESS_STEPS = 100_000;
/** Proven gaps at which the items of the weeks, their days, and a neighbourhood count as solved. */
const COUNTS_GAP = 0.008;
const DAYS_GAP_POINTS = 5;
const STEP_GAP_POINTS = 0.5;
/** Losses up to which an item is considered, in points. */
const COUNTS_LOSS = 3;
const DAYS_LOSS = 0.7;
/** Dearer items are let in round by round. */
const WIDENINGS = [1, 2, 4];

/** What a run knows so far. */
type Climb = {
  readonly indexed: IndexedProblem;
  readonly options: MonthOptions;
  readonly solver: Solver;
  readonly tell: (step: MonthStep) => void;
  best: PlanState;
};

/**
 * Plans a month ever better and tells each step: a first plan by search; themes by linear programs; each
 * week's shops and items by the week model; the days of one week after another; then neighbourhoods of
 * the plan, each solved anew. The same problem and options give the same steps, so that a run cut short
 * has just walked less far. Themes stay after their step.
 */
export function improveMonth(
  indexed: IndexedProblem,
  solver: Solver,
  options: MonthOptions,
  tell: (step: MonthStep) => void,
): void {
  const best = proposeState(indexed, { seed: options.seed, steps: FIRST_STEPS });
  tell({ kind: "plan", state: best });
  const climb: Climb = { indexed, options, solver, tell, best };
  const { themes, bound, ranked } = chooseThemes(indexed, solver);
  tell({ kind: "themes", themes, bound, ranked });
  const model = weekModel(indexed, themes);
  const outline = withSession(
    solver,
    model.program,
    (session) => outlineMonth(indexed, model, session),
    true,
  );
  dress(climb, outline);
  const { nodesMax } = options;
  const counted = { lossMax: COUNTS_LOSS, nodesMax, relativeGap: COUNTS_GAP };
  const counts = countItems(indexed, model, outline, solver, counted);
  const limits = { nodesMax, absoluteGap: DAYS_GAP_POINTS };
  const rolled =
    counts && rollWeeks(indexed, outline, solver, { lossMax: DAYS_LOSS, limits, counts });
  offer(climb, rolled ?? rollWeeks(indexed, outline, solver, { lossMax: Infinity, limits }));
  searchNear(climb, outline);
}

function offer(climb: Climb, next: PlanState | undefined): boolean {
  if (next === undefined || next.worth <= climb.best.worth + 1e-6) return false;
  climb.best = next;
  climb.tell({ kind: "plan", state: next });
  return true;
}

/** The first plan under the chosen themes, searched again among what promises well. */
function dress(climb: Climb, { themes, losses }: Outline): void {
  const { seed } = climb.options;
  const plan = climb.best.copy();
  themes.forEach((theme, week) => plan.setTheme(week, theme));
  const promising = Uint8Array.from(losses, (loss) => (loss <= DAYS_LOSS ? 1 : 0));
  searchPlan(plan, { seed, steps: DRESS_STEPS, keepThemes: true, promising, heat: [4, 0.25] });
  // The chosen themes win in the end: go on from them unless rules stand against it.
  if (plan.broken <= climb.best.broken && !offer(climb, plan)) climb.best = plan;
}

/** Neighbourhood after neighbourhood, the quick ones after each change, until a round finds nothing. */
function searchNear(climb: Climb, outline: Outline): void {
  const { indexed, solver, options } = climb;
  const month = openMonth(indexed, climb.best.themes, solver);
  try {
    tryAll(climb, month, outline, quickOnes(indexed));
    for (let round = 0; round < options.roundsMax; round += 1) {
      let isBetter = false;
      for (const freed of slowOnes(indexed, WIDENINGS[round] ?? Infinity)) {
        if (!tryAll(climb, month, outline, [freed])) continue;
        isBetter = true;
        tryAll(climb, month, outline, quickOnes(indexed));
      }
      if (!isBetter && round >= WIDENINGS.length) return;
    }
  } finally {
    month.session.close();
  }
}

function tryAll(climb: Climb, month: MonthDays, outline: Outline, all: readonly Freed[]): boolean {
  const limits = { nodesMax: climb.options.nodesMax, absoluteGap: STEP_GAP_POINTS };
  const found = all.map((freed) => {
    const near = neighbourhoodOf(climb.best, outline, freed);
    return offer(climb, improveWithin(month, climb.best, near, limits));
  });
  return found.includes(true);
}
