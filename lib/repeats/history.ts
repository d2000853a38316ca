import { dayNumber, dayOfNumber, type Day } from "#lib/calendar/index.ts";
import { subjectsOf, type RepeatLevel, type ShownItem, type ShownWeek } from "./shown.ts";

type Seen = { readonly days: number[]; count: number };

/** Everything that has been on, ready to be asked. Built once by `historyOf`. */
export type History = {
  /** How often something has been on: items for products, foods, families and tricks, weeks for the rest. */
  readonly countOf: (level: RepeatLevel, id: string) => number;
  /** The days it has been on, earliest first, each day once. Themes and motifs count by their Monday. */
  readonly daysOf: (level: RepeatLevel, id: string) => Day[];
  /** The last day before `day` that it was on, or undefined. Found by binary search. */
  readonly lastBefore: (level: RepeatLevel, id: string, day: Day) => Day | undefined;
};

/** Indexes weeks, in any order, for "has it ever been on?" at every level. */
export function historyOf(weeks: readonly ShownWeek[]): History {
  const seen = new Map<string, Seen>();
  const note = (level: RepeatLevel, id: string, on: Day): void => {
    const key = `${level}:${id}`;
    const entry = seen.get(key) ?? { days: [], count: 0 };
    entry.days.push(dayNumber(on));
    entry.count += 1;
    seen.set(key, entry);
  };
  for (const week of weeks) {
    if (week.themeId !== null) note("theme", week.themeId, week.week);
    for (const motif of new Set(week.motifs)) note("motif", motif, week.week);
    for (const item of week.items) {
      for (const { level, id } of subjectsOf(item)) note(level, id, item.on);
    }
  }
  const sorted = new Map<string, readonly number[]>();
  for (const [key, { days }] of seen) {
    sorted.set(
      key,
      [...new Set(days)].sort((left, right) => left - right),
    );
  }
  return {
    countOf: (level, id) => seen.get(`${level}:${id}`)?.count ?? 0,
    daysOf: (level, id) => (sorted.get(`${level}:${id}`) ?? []).map(dayOfNumber),
    lastBefore: (level, id, day) => lastBelow(sorted.get(`${level}:${id}`) ?? [], dayNumber(day)),
  };
}

/** Every time a food was on, latest first, with the week it was in. */
export function appearancesOf(
  foodId: string,
  weeks: readonly ShownWeek[],
): { readonly week: ShownWeek; readonly item: ShownItem }[] {
  return weeks
    .flatMap((week) =>
      week.items.filter((item) => item.foodId === foodId).map((item) => ({ week, item })),
    )
    .sort((left, right) => dayNumber(right.item.on) - dayNumber(left.item.on));
}

/**
 * The same weeks after food `from` was merged into `into`: its items become the other's, in the
 * other's family. No item is added or lost, so counts of appearances add up.
 */
export function mergeInHistory(
  weeks: readonly ShownWeek[],
  from: string,
  into: { readonly foodId: string; readonly familyId: string },
): ShownWeek[] {
  return weeks.map((week) => ({
    ...week,
    items: week.items.map((item) => (item.foodId === from ? { ...item, ...into } : item)),
  }));
}

function lastBelow(sorted: readonly number[], limit: number): Day | undefined {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? Infinity) < limit) low = middle + 1;
    else high = middle;
  }
  const found = sorted[low - 1];
  return found === undefined ? undefined : dayOfNumber(found);
}
