import type { IndexedProblem } from "./indexed.ts";
import { improveWithin, openMonth, type MonthDays } from "./month-days.ts";
import type { PlanModel } from "./model-draft.ts";
import { mateHere, type Mate } from "./mate.ts";
import { eachPart, neighbourhoodOf, wideOnes, type Freed } from "./neighbourhoods.ts";
import { outlineOf, type Outline } from "./outline.ts";
import { placeItems, type PlacingGround } from "./place-items.ts";
import { FIRST_STEPS, proposeState } from "./propose.ts";
import { chooseThemes, type RankedTheme } from "./rank-themes.ts";
import { searchPlan } from "./search.ts";
import type { Solver } from "./solver.ts";
import type { PlanState } from "./state.ts";
import { countItems, weekModel, type CountedMonth } from "./week-counts.ts";

/** A step on the way: a better plan, the themes, or a lower bound on every plan with them. */
type MonthStep =
  | { readonly kind: "plan"; readonly state: PlanState }
  | {
      readonly kind: "themes";
      readonly themes: Int32Array;
      readonly bound: number;
      readonly ranked: readonly RankedTheme[];
    }
  | { readonly kind: "bound"; readonly bound: number };

/** How hard to try, in rounds and seeds, not seconds: every machine gets the same plans. */
export type MonthOptions = {
  readonly seed: string;
  /** Rounds over all neighbourhoods; a round that finds nothing ends the search. */
  readonly roundsMax: number;
  /** Somebody who tries some of the placements meanwhile; absent: they are tried here. */
  readonly mate?: Mate;
};

export const USUAL_MONTH: Omit<MonthOptions, "seed"> = { roundsMax: 100 };

/** Steps of the search among what the relaxation leaves: a tenth of a second. */
const DRESS_STEPS = 100_000;
const DRESS_LOSS = 0.7;
/** Proven gap in points at which a neighbourhood counts as solved. */
const STEP_GAP_POINTS = 0.5;
/** Placements of the counted items; every second one is the mate's. */
const PLACEMENTS = 6;
/** Dearer items are let in round by round. */
const WIDENINGS = [1, 2, 4];

/** What a run knows so far. */
type Climb = {
  readonly indexed: IndexedProblem;
  readonly options: MonthOptions;
  readonly solver: Solver;
  readonly tell: (step: MonthStep) => void;
  /** No plan with the chosen themes is worth more. */
  bound: number;
  /** The best plan told. */
  best: PlanState;
  /** The plan worked on. */
  here: PlanState;
};

/**
 * Plans a month ever better and tells each step: a first plan by search; themes by linear programs; which
 * items and shops each week holds, by the week model, and with it the bound; these items placed on days
 * from several seeds; at last wider neighbourhoods of the best plan. The same problem and options give
 * the same steps, so that a run cut short has just walked less far. Themes stay after their step.
 */
export function improveMonth(
  indexed: IndexedProblem,
  solver: Solver,
  options: MonthOptions,
  tell: (step: MonthStep) => void,
): void {
  const best = proposeState(indexed, { seed: options.seed, steps: FIRST_STEPS });
  tell({ kind: "plan", state: best });
  const climb: Climb = { indexed, options, solver, tell, bound: Infinity, best, here: best };
  const { themes, bound, ranked } = chooseThemes(indexed, solver);
  tell({ kind: "themes", themes, bound, ranked });
  const model = weekModel(indexed, themes);
  const relaxed = outlineOf(indexed, model, solver);
  dress(climb, relaxed);
  const mate = options.mate ?? mateHere(indexed, solver);
  const counted = countAll(climb, model, mate);
  const month = openMonth(indexed, themes, solver);
  try {
    const outline = counted ? outlineOf(indexed, model, solver, counted.tours) : relaxed;
    if (counted) placeAll(climb, { indexed, outline, month, counted }, mate);
    searchNear(climb, outline, month);
  } finally {
    month.session.close();
  }
}

/** What each week holds; the first counts are placed by the mate while they are bettered. */
function countAll(climb: Climb, model: PlanModel, mate: Mate): CountedMonth | undefined {
  const { indexed, solver, options, tell } = climb;
  const themes = model.scope.themes ?? new Int32Array(0);
  let isAsked = false;
  const counted = countItems(indexed, model, solver, climb.best, (step) => {
    if (step.kind === "bound") {
      climb.bound = step.bound;
      tell(step);
      return;
    }
    isAsked = true;
    mate.start({ themes, counted: step.counted, seeds: [`${options.seed} first`] });
  });
  if (isAsked) takeOver(climb, mate, themes);
  return counted;
}

/** The mate's placement, once it is there, when it is better. */
function takeOver(climb: Climb, mate: Mate, themes: Int32Array): void {
  const found = mate.collect();
  if (!found) return;
  const state = climb.best.copy();
  state.load(found, themes);
  moveTo(climb, state);
}

/** Nothing better is left to find. */
function isProven({ best, bound }: Climb): boolean {
  return best.broken === 0 && best.points >= bound - 1e-6;
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

/** The counted items placed from each seed, some of them by the mate. */
function placeAll(climb: Climb, ground: PlacingGround, mate: Mate): void {
  if (isProven(climb)) return;
  const { counted, outline } = ground;
  const seeds = [...Array(PLACEMENTS).keys()].map((number) => `${climb.options.seed} ${number}`);
  const [own, others] = [0, 1].map((rest) => seeds.filter((_, number) => number % 2 === rest));
  mate.start({ themes: outline.themes, counted, seeds: others ?? [] });
  for (const seed of own ?? []) {
    if (!isProven(climb)) placeItems(ground, seed, (state) => void moveTo(climb, state));
  }
  takeOver(climb, mate, outline.themes);
}

/** Neighbourhood after neighbourhood, the quick ones after each change, until a round finds nothing. */
function searchNear(climb: Climb, outline: Outline, month: MonthDays): void {
  const { indexed, options } = climb;
  climb.here = climb.best;
  for (let round = 0; round < options.roundsMax; round += 1) {
    let isBetter = false;
    for (const freed of wideOnes(indexed, WIDENINGS[round] ?? Infinity)) {
      if (isProven(climb)) return;
      if (!tryAll(climb, month, outline, [freed])) continue;
      isBetter = true;
      tryAll(climb, month, outline, eachPart(indexed));
    }
    if (!isBetter && round >= WIDENINGS.length) return;
  }
}

function tryAll(climb: Climb, month: MonthDays, outline: Outline, all: readonly Freed[]): boolean {
  const limits = { nodesMax: 1, absoluteGap: STEP_GAP_POINTS };
  const found = all.map((freed) => {
    const near = neighbourhoodOf(climb.here, outline, freed);
    const next = improveWithin(month, climb.here, near, limits);
    return next !== undefined && moveTo(climb, next);
  });
  return found.includes(true);
}
