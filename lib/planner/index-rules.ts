import { dayNumber } from "#lib/calendar/index.ts";
import type { IndexedProblem, IndexedQuota, IndexedRest } from "./indexed.ts";
import type { PlanProblem } from "./problem.ts";

type Places = Pick<
  IndexedProblem,
  "dayCount" | "itemCount" | "dayNumbers" | "mondayNumbers" | "itemIndex" | "dayIndex"
>;

/** Numbers of the items an id list names; unknown ids are left out. */
export function itemNumbers(
  ids: readonly string[],
  itemIndex: ReadonlyMap<string, number>,
): number[] {
  return ids.map((id) => itemIndex.get(id)).filter((item) => item !== undefined);
}

/** Rest groups that can still bind: with their reach over the planned days. */
export function indexRests(problem: PlanProblem, places: Places): IndexedRest[] {
  const { dayCount, dayNumbers, itemIndex } = places;
  return [...problem.rests, ...onceInALunch(problem)].map((rest) => {
    const first = new Int32Array(dayCount);
    const last = new Int32Array(dayCount);
    for (let day = 0; day < dayCount; day += 1) {
      const here = dayNumbers[day] ?? 0;
      const isNear = (other: number): boolean => Math.abs(other - here) < rest.restDays;
      first[day] = dayNumbers.findIndex(isNear);
      last[day] = dayNumbers.findLastIndex(isNear);
    }
    return { restDays: rest.restDays, items: itemNumbers(rest.itemIds, itemIndex), first, last };
  });
}

/** Items of no rest group still come once in a lunch. */
function onceInALunch({ items, rests }: PlanProblem): { restDays: number; itemIds: string[] }[] {
  const resting = new Set(rests.flatMap(({ itemIds }) => itemIds));
  return items
    .filter(({ id }) => !resting.has(id))
    .map(({ id }) => ({ restDays: 1, itemIds: [id] }));
}

/** Quotas with the lunches or weeks they are about. */
export function indexQuotas(problem: PlanProblem, places: Places): IndexedQuota[] {
  const { dayNumbers, mondayNumbers, itemIndex } = places;
  return problem.quotas.map((quota) => {
    const isWeekly = quota.scope === "week";
    const numbers = isWeekly ? mondayNumbers : dayNumbers;
    const on = quota.on === null ? null : new Set(quota.on.map(dayNumber));
    const units = [...numbers.keys()].filter((unit) => on === null || on.has(numbers[unit] ?? -1));
    const isOn = new Uint8Array(numbers.length);
    for (const unit of units) isOn[unit] = 1;
    const items = itemNumbers(quota.itemIds, itemIndex);
    return { isWeekly, units, isOn, items, min: quota.min, max: quota.max ?? Infinity };
  });
}

/** What may be on when: forbidding rules and rests from outside the plan, as one table of 0 and 1. */
export function indexAllowed(problem: PlanProblem, places: Places): Uint8Array {
  const { dayCount, itemCount, dayNumbers, itemIndex, dayIndex } = places;
  const allowed = new Uint8Array(dayCount * itemCount).fill(1);
  const forbid = (days: Iterable<number>, ids: readonly string[]): void => {
    const items = itemNumbers(ids, itemIndex);
    for (const day of days) for (const item of items) allowed[day * itemCount + item] = 0;
  };
  for (const rule of problem.forbidden) {
    const days = rule.on?.map((date) => dayIndex.get(date)).filter((day) => day !== undefined);
    forbid(days ?? Array(dayCount).keys(), rule.itemIds);
  }
  const [first = 0, last = 0] = [dayNumbers[0], dayNumbers.at(-1)];
  for (const rest of problem.rests) {
    // Long ago or far ahead nothing is near: an old series must not cost more than a young one.
    const shown = rest.shownOn
      .map(dayNumber)
      .filter((past) => past > first - rest.restDays && past < last + rest.restDays);
    const isTooClose = (day: number): boolean =>
      shown.some((past) => Math.abs((dayNumbers[day] ?? 0) - past) < rest.restDays);
    if (shown.length > 0) forbid([...Array(dayCount).keys()].filter(isTooClose), rest.itemIds);
  }
  return allowed;
}

/** For each item, the positions of the lists it is in. */
export function positionsOf(
  lists: readonly { readonly items: readonly number[] }[],
  itemCount: number,
): number[][] {
  const positions: number[][] = Array.from({ length: itemCount }, () => []);
  lists.forEach(({ items }, position) => {
    for (const item of items) positions[item]?.push(position);
  });
  return positions;
}
