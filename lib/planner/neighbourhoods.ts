import type { IndexedProblem } from "./indexed.ts";
import type { Neighbourhood } from "./month-days.ts";
import type { Outline } from "./outline.ts";
import type { PlanState } from "./state.ts";

/** What to free at once: some parts in all weeks, or some weeks in all parts. */
export type Freed = {
  readonly parts: readonly number[] | null;
  readonly weeks: readonly number[] | null;
  /** Items up to this loss may come in. */
  readonly lossMax: number;
};

/** Each part across all weeks: a solver settles one in a tenth of a second. */
export function eachPart({ itemsOfPart }: IndexedProblem): Freed[] {
  return [...itemsOfPart.keys()].map((part) => ({ parts: [part], weeks: null, lossMax: 6 }));
}

/** Each week with its shops: half a second or so. */
export function eachWeek({ weekCount }: IndexedProblem, lossMax = 3): Freed[] {
  return [...Array(weekCount).keys()].map((week) => ({ parts: null, weeks: [week], lossMax }));
}

/** Runs of three parts in all weeks. */
export function partRuns({ itemsOfPart }: IndexedProblem, lossMax: number): Freed[] {
  const count = itemsOfPart.length;
  return [...itemsOfPart.keys()].map((part) => ({
    ...{ parts: [part, (part + 1) % count, (part + 2) % count], weeks: null },
    lossMax,
  }));
}

/** Pairs of weeks, single weeks and runs of parts, seconds each. `widening` lets in dearer items. */
export function wideOnes(indexed: IndexedProblem, widening: number): Freed[] {
  const weeks = [...Array(indexed.weekCount).keys()];
  return [
    ...pairsOf(weeks).map((pair) => ({ parts: null, weeks: pair, lossMax: 0.7 * widening })),
    ...eachWeek(indexed, 4 * widening),
    ...partRuns(indexed, 2 * widening),
  ];
}

/** Neighbours first, then weeks further apart. */
export function pairsOf(weeks: readonly number[]): number[][] {
  return weeks
    .slice(1)
    .flatMap((_, place) => weeks.slice(place + 1).map((week) => [week - place - 1, week]));
}

/** The neighbourhood of a plan: what is there in a freed week stays possible on each of its days. */
export function neighbourhoodOf(
  state: PlanState,
  { losses }: Outline,
  { parts, weeks, lossMax }: Freed,
): Neighbourhood {
  const { dayCount, itemCount, weekOfDay, partOfItem, daysOfWeek } = state.indexed;
  const isOpen = new Uint8Array(dayCount * itemCount);
  const isThere = new Uint8Array(state.indexed.weekCount * itemCount);
  daysOfWeek.forEach((days, week) => {
    for (const day of days) {
      for (const item of state.itemsOf(day)) {
        if (item >= 0) isThere[week * itemCount + item] = 1;
      }
    }
  });
  for (let day = 0; day < dayCount; day += 1) {
    const week = weekOfDay[day] ?? 0;
    if (weeks && !weeks.includes(week)) continue;
    for (let item = 0; item < itemCount; item += 1) {
      if (parts && !parts.includes(partOfItem[item] ?? -1)) continue;
      const place = week * itemCount + item;
      const isWorth = (losses[place] ?? Infinity) <= lossMax;
      if (isWorth || isThere[place] === 1) isOpen[day * itemCount + item] = 1;
    }
  }
  return { isOpen, weeks: weeks ?? [] };
}
