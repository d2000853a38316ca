import { dayNumber } from "#lib/calendar/index.ts";
import { applyLocks, choicesByDay } from "./cell-choices.ts";
import type { IndexedProblem } from "./indexed.ts";
import { expectedShare } from "./item-aims.ts";
import { PlanState } from "./state.ts";
import { pickThemes, themePotentials } from "./theme-potential.ts";

/** What the simple filler looks for first: fit and liking, or whatever was not seen longest. */
export type FillerTaste = "fitting" | "longest-unseen";

/**
 * A plan by plain rules, day by day and place by place: of the items that break nothing, the best to
 * the taste. It never looks back, so a later place may stay empty; what is empty is left empty.
 */
export function fillPlan(indexed: IndexedProblem, taste: FillerTaste = "fitting"): PlanState {
  const state = new PlanState(indexed);
  applyLocks(state);
  const potentials = taste === "fitting" ? themePotentials(indexed) : themesUnseen(indexed);
  pickThemes(indexed, potentials).forEach((theme, week) => state.setTheme(week, theme));
  fillEmptyCells(state, taste);
  return state;
}

/** Fills the empty required cells of a state in order, as `fillPlan` does. */
function fillEmptyCells(state: PlanState, taste: FillerTaste): void {
  const { indexed } = state;
  const choices = choicesByDay(indexed);
  const parts = indexed.itemsOfPart.length;
  for (let day = 0; day < indexed.dayCount; day += 1) {
    indexed.cells.forEach(({ part, isRequired }, cell) => {
      const isEmpty = (state.items[day * indexed.cells.length + cell] ?? -1) < 0;
      if (!isRequired || !isEmpty) return;
      const ranked = rank(state, day, choices[day * parts + part] ?? [], taste);
      putFirstThatFits(state, day, cell, ranked);
    });
  }
}

function putFirstThatFits(state: PlanState, day: number, cell: number, ranked: number[]): void {
  const before = state.broken;
  for (const item of ranked) {
    state.put(day, cell, item);
    if (state.broken < before) return;
    state.put(day, cell, -1);
  }
}

function rank(
  state: PlanState,
  day: number,
  items: readonly number[],
  taste: FillerTaste,
): number[] {
  const { indexed } = state;
  const theme = state.themes[indexed.weekOfDay[day] ?? 0] ?? -1;
  const placed = taste === "longest-unseen" ? daysSincePlaced(state, day) : undefined;
  const keyOf = (number: number): number => {
    const item = indexed.problem.items[number];
    if (!item) return 0;
    const unseen = item.daysUnseen ?? Infinity;
    if (placed) return placed.get(item.foodId) ?? Math.min(unseen, 100_000);
    const fit = theme < 0 ? 0 : (indexed.fits[theme * indexed.itemCount + number] ?? 0);
    return 2 * fit + expectedShare(item) + Math.min(1, unseen / 365);
  };
  const keys = new Map(items.map((item) => [item, keyOf(item)]));
  return [...items].sort(
    (left, right) => (keys.get(right) ?? 0) - (keys.get(left) ?? 0) || left - right,
  );
}

/** Days since viewers saw each theme (week * themes + theme), as `themePotentials` has them. */
function themesUnseen({ problem, mondayNumbers, themeAllowed }: IndexedProblem): Float64Array {
  return Float64Array.from(themeAllowed, (isAllowed, place) => {
    const monday = mondayNumbers[Math.floor(place / problem.themes.length)] ?? 0;
    const shownOn = problem.themes[place % problem.themes.length]?.shownOn ?? [];
    const past = shownOn.map((on) => monday - dayNumber(on)).filter((days) => days > 0);
    return isAllowed ? Math.min(...past, 100_000) : -Infinity;
  });
}

/** For each food placed on an earlier day, the days since: it is not unseen any more. */
function daysSincePlaced(state: PlanState, day: number): ReadonlyMap<string, number> {
  const { dayNumbers, problem } = state.indexed;
  const placed = new Map<string, number>();
  for (let before = 0; before < day; before += 1) {
    for (const item of state.itemsOf(before)) {
      const food = problem.items[item]?.foodId;
      if (food) placed.set(food, (dayNumbers[day] ?? 0) - (dayNumbers[before] ?? 0));
    }
  }
  return placed;
}
