import { randomFrom, type Random } from "#lib/base/index.ts";
import { applyLocks } from "./cell-choices.ts";
import type { IndexedProblem } from "./indexed.ts";
import { PlanState } from "./state.ts";

/** How often each week holds each item (week * itemCount + item). */
export type WeekCounts = Int32Array;

/** How to look for the days of a month's items. */
export type PlacingOptions = {
  readonly seed: string;
  readonly steps: number;
  /** Keep what is on its day in this plan, as far as it is still wanted; absent: shuffle all. */
  readonly from?: PlanState;
  /** Degrees of the walk in points, from and to. */
  readonly heat: readonly [from: number, to: number];
};

/**
 * Puts each week's items on its days (frequencies first, days afterwards: Balintfy et al. 1978). A walk
 * (simulated annealing) that only exchanges places within a week, so that every step keeps the items.
 */
export function placeItems(
  indexed: IndexedProblem,
  themes: Int32Array,
  counts: WeekCounts,
  options: PlacingOptions,
): PlanState {
  const random = randomFrom(options.seed);
  const state = new PlanState(indexed);
  const isLocked = applyLocks(state);
  themes.forEach((theme, week) => state.setTheme(week, theme));
  spread(state, counts, random, options.from);
  const [hot, cold] = options.heat;
  const cooling = (cold / hot) ** (1 / Math.max(1, options.steps));
  const best = { items: state.items.slice(), worth: state.worth };
  let heat = hot;
  for (let step = 0; step < options.steps; step += 1, heat *= cooling) {
    exchangePlaces(state, isLocked, random, heat);
    if (state.worth <= best.worth + 1e-9) continue;
    best.worth = state.worth;
    best.items.set(state.items);
  }
  state.load(best.items, themes);
  return state;
}

type Place = { readonly day: number; readonly cell: number };

/** Fills each week's cells: what `from` has in place stays there, the rest goes where there is room. */
function spread(state: PlanState, counts: WeekCounts, random: Random, from?: PlanState): void {
  const { weekCount, itemCount, itemsOfPart } = state.indexed;
  for (let week = 0; week < weekCount; week += 1) {
    itemsOfPart.forEach((items, part) => {
      const places = placesOf(state.indexed, week, part, random);
      const wanted = items.flatMap((item) =>
        Array.from({ length: counts[week * itemCount + item] ?? 0 }, () => item),
      );
      for (const place of places) strike(wanted, at(state, place));
      for (const place of places) {
        const item = from === undefined ? -1 : at(from, place);
        if (at(state, place) < 0 && strike(wanted, item)) state.put(place.day, place.cell, item);
      }
      const free = places.filter((place) => at(state, place) < 0);
      random.shuffle(wanted).forEach((item, number) => {
        const place = free[number];
        if (place) state.put(place.day, place.cell, item);
      });
    });
  }
}

/** Takes one appearance off the list; false when there is none. */
function strike(wanted: number[], item: number): boolean {
  const place = item < 0 ? -1 : wanted.indexOf(item);
  if (place >= 0) wanted.splice(place, 1);
  return place >= 0;
}

/** The cells of a part in a week, shuffled, those that must be filled first. */
function placesOf(indexed: IndexedProblem, week: number, part: number, random: Random): Place[] {
  const cells = indexed.cellsOfPart[part] ?? [];
  const places = (isRequired: boolean): Place[] =>
    random.shuffle(
      (indexed.daysOfWeek[week] ?? []).flatMap((day) =>
        cells
          .filter((cell) => indexed.cells[cell]?.isRequired === isRequired)
          .map((cell) => ({ day, cell })),
      ),
    );
  return [...places(true), ...places(false)];
}

function at({ items, indexed }: PlanState, { day, cell }: Place): number {
  return items[day * indexed.cells.length + cell] ?? -1;
}

function exchangePlaces(
  state: PlanState,
  isLocked: Uint8Array,
  random: Random,
  heat: number,
): void {
  const { daysOfWeek, cellsOfPart, cells } = state.indexed;
  const days = daysOfWeek[random.below(daysOfWeek.length)] ?? [];
  const part = cellsOfPart[random.below(cellsOfPart.length)] ?? [];
  if (part.length === 0) return;
  const one = { day: random.pick(days), cell: random.pick(part) };
  const other = { day: random.pick(days), cell: random.pick(part) };
  const isFixed = ({ day, cell }: Place): boolean => isLocked[day * cells.length + cell] === 1;
  if (one.day === other.day || isFixed(one) || isFixed(other)) return;
  const worth = state.worth;
  state.exchange(one.day, one.cell, other.day, other.cell);
  const change = state.worth - worth;
  if (change >= 0 || random.next() < Math.exp(change / heat)) return;
  state.exchange(one.day, one.cell, other.day, other.cell);
}
