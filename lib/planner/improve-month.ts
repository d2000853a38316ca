import type { IndexedProblem } from "./indexed.ts";
import { improveWithin, openMonth, type MonthDays } from "./month-days.ts";
import type { PlanModel } from "./model-draft.ts";
import { eachPart, eachWeek, neighbourhoodOf, wideOnes, type Freed } from "./neighbourhoods.ts";
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
const DRESS_LOSS = 0.7;
/** Proven gap in points at which a neighbourhood counts as solved. */
const STEP_GAP_POINTS = 0.5;

/** One way to put items on days: how far each program is solved and which items it considers, in points. */
type Pass = {
  /** For the items of the weeks; null: none, later weeks stay relaxed. */
  readonly counts: { readonly lossMax: number; readonly relativeGap: number } | null;
  readonly days: { readonly lossMax: number; readonly absoluteGap: number };
};

/** The first is quick; the others start elsewhere and often end higher. */
const PASSES: readonly Pass[] = [
  { counts: { lossMax: 3, relativeGap: 0.008 }, days: { lossMax: 0.7, absoluteGap: 5 } },
  { counts: { lossMax: 3, relativeGap: 0.0025 }, days: { lossMax: 1.5, absoluteGap: 3 } },
  { counts: null, days: { lossMax: 1, absoluteGap: 5 } },
];
/** Dearer items are let in round by round. */
const WIDENINGS = [1, 2, 4];

/** What a run knows so far. */
type Climb = {
  readonly indexed: IndexedProblem;
  readonly options: MonthOptions;
  readonly solver: Solver;
  readonly tell: (step: MonthStep) => void;
  /** The best plan told. */
  best: PlanState;
  /** The plan worked on. */
  here: PlanState;
};

/**
 * Plans a month ever better and tells each step: a first plan by search; themes by linear programs; the
 * shops of each week by the week model; then some passes, each choosing the weeks' items, rolling them
 * out on days and solving each week and each part anew; at last wider neighbourhoods of the best plan.
 * The same problem and options give the same steps, so that a run cut short has just walked less far.
 * Themes stay after their step.
 */
export function improveMonth(
  indexed: IndexedProblem,
  solver: Solver,
  options: MonthOptions,
  tell: (step: MonthStep) => void,
): void {
  const best = proposeState(indexed, { seed: options.seed, steps: FIRST_STEPS });
  tell({ kind: "plan", state: best });
  const climb: Climb = { indexed, options, solver, tell, best, here: best };
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
  const month = openMonth(indexed, themes, solver);
  try {
    for (const pass of PASSES) walk(climb, pass, model, outline, month);
    searchNear(climb, outline, month);
  } finally {
    month.session.close();
  }
}

/** Goes on from a plan; tells it when it is the best. True when it is better than the one before. */
function moveTo(climb: Climb, next: PlanState): boolean {
  const isBetter = next.worth > climb.here.worth + 1e-6;
  climb.here = next;
  if (next.worth > climb.best.worth + 1e-6) {
    climb.best = next;
    climb.tell({ kind: "plan", state: next });
  }
  return isBetter;
}

/** The first plan under the chosen themes, searched again among what promises well. */
function dress(climb: Climb, { themes, losses }: Outline): void {
  const { seed } = climb.options;
  const plan = climb.best.copy();
  themes.forEach((theme, week) => plan.setTheme(week, theme));
  const promising = Uint8Array.from(losses, (loss) => (loss <= DRESS_LOSS ? 1 : 0));
  searchPlan(plan, { seed, steps: DRESS_STEPS, keepThemes: true, promising, heat: [4, 0.25] });
  moveTo(climb, plan);
  // The chosen themes win in the end: from here on they count, unless rules stand against them.
  if (plan.broken <= climb.best.broken) climb.best = plan;
}

function walk(
  climb: Climb,
  pass: Pass,
  model: PlanModel,
  outline: Outline,
  month: MonthDays,
): void {
  const { indexed, solver, options } = climb;
  const { nodesMax } = options;
  const { lossMax, absoluteGap } = pass.days;
  const counts =
    pass.counts && countItems(indexed, model, outline, solver, { ...pass.counts, nodesMax });
  const rolled = rollWeeks(indexed, outline, solver, {
    ...{ lossMax, limits: { nodesMax, absoluteGap } },
    ...(counts ? { counts } : {}),
  });
  if (!rolled) return;
  moveTo(climb, rolled);
  tryAll(climb, month, outline, [...eachWeek(indexed), ...eachPart(indexed)]);
}

/** Neighbourhood after neighbourhood, the quick ones after each change, until a round finds nothing. */
function searchNear(climb: Climb, outline: Outline, month: MonthDays): void {
  const { indexed, options } = climb;
  climb.here = climb.best;
  for (let round = 0; round < options.roundsMax; round += 1) {
    let isBetter = false;
    for (const freed of wideOnes(indexed, WIDENINGS[round] ?? Infinity)) {
      if (!tryAll(climb, month, outline, [freed])) continue;
      isBetter = true;
      tryAll(climb, month, outline, eachPart(indexed));
    }
    if (!isBetter && round >= WIDENINGS.length) return;
  }
}

function tryAll(climb: Climb, month: MonthDays, outline: Outline, all: readonly Freed[]): boolean {
  const limits = { nodesMax: climb.options.nodesMax, absoluteGap: STEP_GAP_POINTS };
  const found = all.map((freed) => {
    const near = neighbourhoodOf(climb.here, outline, freed);
    const next = improveWithin(month, climb.here, near, limits);
    return next !== undefined && moveTo(climb, next);
  });
  return found.includes(true);
}
