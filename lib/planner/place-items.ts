import { applyLocks } from "./cell-choices.ts";
import type { IndexedProblem } from "./indexed.ts";
import { improveWithin, type MonthDays } from "./month-days.ts";
import {
  eachPart,
  eachWeek,
  neighbourhoodOf,
  pairsOf,
  partRuns,
  type Freed,
} from "./neighbourhoods.ts";
import type { Outline } from "./outline.ts";
import { searchPlan } from "./search.ts";
import { PlanState } from "./state.ts";
import type { CountedMonth } from "./week-counts.ts";

/** What placing works on. */
export type PlacingGround = {
  readonly indexed: IndexedProblem;
  readonly outline: Outline;
  readonly month: MonthDays;
  readonly counted: CountedMonth;
};

/** Walks tried for one placement and how hot they start, in points; the best one is gone on with. */
const HEATS = [12, 8, 6] as const;
const WALK_STEPS_PER_CELL = 550;
const COLD = 0.5;
/** Items that may come in where the counted ones alone break a rule. */
const REPAIR = { lossMax: 0.7, stepsPerCell: 800, heat: [1, 0.1] } as const;
/** Proven gap in points at which a neighbourhood counts as solved. */
const STEP_GAP_POINTS = 0.3;

/**
 * Gives what each week holds its days: walks that exchange days, then weeks, pairs of weeks and runs of
 * parts solved anew among the counted items only, at last parts with others let in. Each seed ends elsewhere;
 * tells each better plan and returns the last, which may break rules where the counts have no days.
 */
export function placeItems(
  ground: PlacingGround,
  seed: string,
  tell: (state: PlanState) => void,
): PlanState {
  const { indexed, outline } = ground;
  const rough = roughly(ground, seed);
  const solve = (from: PlanState, among: Outline, freed: Freed, nodesMax = 1): PlanState => {
    const near = neighbourhoodOf(from, among, freed);
    const limits = { nodesMax, absoluteGap: STEP_GAP_POINTS };
    const next = improveWithin(ground.month, from, near, limits);
    if (next) tell(next);
    return next ?? from;
  };
  if (rough.broken > 0) return rough;
  tell(rough);
  const counted = onlyCounted(ground);
  let state = rough;
  for (const freed of eachWeek(indexed, 0)) state = solve(state, counted, freed, 30);
  for (const freed of nearWeeks(indexed)) state = solve(state, counted, freed);
  for (const freed of partRuns(indexed, 0)) state = solve(state, counted, freed);
  for (const freed of eachPart(indexed)) state = solve(state, outline, freed);
  return state;
}

function nearWeeks({ weekCount }: IndexedProblem): Freed[] {
  const weeks = [...Array(weekCount).keys()];
  return pairsOf(weeks)
    .slice(0, weekCount - 1)
    .map((pair) => ({ parts: null, weeks: pair, lossMax: 0 }));
}

/** Nothing but the counted items may come or go. */
function onlyCounted({ outline, counted }: PlacingGround): Outline {
  const losses = outline.losses.map((_, at) => ((counted.counts[at] ?? 0) > 0 ? 0 : Infinity));
  return { ...outline, losses };
}

function roughly(ground: PlacingGround, seed: string): PlanState {
  const start = spread(ground);
  const walked = HEATS.map((heat) => {
    const state = start.copy();
    const steps = WALK_STEPS_PER_CELL * state.items.length;
    const options = { seed: `${seed} ${heat}`, steps, keepCounts: true };
    searchPlan(state, { ...options, keepThemes: true, heat: [heat, COLD] });
    return state;
  });
  const best = walked.reduce((one, other) => (other.worth > one.worth ? other : one), start);
  if (best.broken === 0) return best;
  const { outline, counted } = ground;
  const promising = Uint8Array.from(outline.losses, (loss, at) =>
    loss <= REPAIR.lossMax || (counted.counts[at] ?? 0) > 0 ? 1 : 0,
  );
  const { stepsPerCell, heat } = REPAIR;
  const steps = stepsPerCell * best.items.length;
  searchPlan(best, { seed, steps, keepThemes: true, promising, heat });
  return best;
}

/** The counted items one after another over the days of their week, what is locked on its day. */
function spread({ indexed, outline, counted }: PlacingGround): PlanState {
  const { itemCount, itemsOfPart, cellsOfPart, cells } = indexed;
  const state = new PlanState(indexed);
  outline.themes.forEach((theme, week) => state.setTheme(week, theme));
  applyLocks(state);
  indexed.daysOfWeek.forEach((days, week) => {
    const isOn = (item: number): number =>
      days.filter((day) => state.itemsOf(day).includes(item)).length;
    itemsOfPart.forEach((items, part) => {
      const uses = items.flatMap((item) => {
        const left = (counted.counts[week * itemCount + item] ?? 0) - isOn(item);
        return Array.from({ length: Math.max(0, left) }, () => item);
      });
      const free = (cellsOfPart[part] ?? []).flatMap((cell) =>
        days
          .filter((day) => (state.items[day * cells.length + cell] ?? -1) < 0)
          .map((day) => ({ day, cell })),
      );
      free.forEach(({ day, cell }, place) => state.put(day, cell, uses[place] ?? -1));
    });
  });
  return state;
}
