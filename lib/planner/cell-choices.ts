import type { IndexedProblem } from "./indexed.ts";
import type { PlanState } from "./state.ts";

/**
 * For each day and part, the items that may be there (day * parts + part); with a table of promising
 * items (week * itemCount + item), only those.
 */
export function choicesByDay(
  indexed: IndexedProblem,
  promising?: Uint8Array,
): readonly (readonly number[])[] {
  const { dayCount, itemCount, itemsOfPart, allowed, weekOfDay } = indexed;
  const isPromising = (day: number, item: number): boolean =>
    promising === undefined || promising[(weekOfDay[day] ?? 0) * itemCount + item] === 1;
  return Array.from({ length: dayCount }, (_, day) => day).flatMap((day) =>
    itemsOfPart.map((items) =>
      items.filter((item) => allowed[day * itemCount + item] && isPromising(day, item)),
    ),
  );
}

/**
 * Puts locked items and themes in place. Returns which cells are taken by locks (day * cells + cell).
 * A lock beyond the cells of its part finds no place and stays out: the model names that conflict.
 */
export function applyLocks(state: PlanState): Uint8Array {
  const { indexed } = state;
  const isLocked = new Uint8Array(state.items.length);
  for (const { day, item } of indexed.locks) {
    const cells = indexed.cellsOfPart[indexed.partOfItem[item] ?? -1] ?? [];
    const place = (cell: number): number => day * indexed.cells.length + cell;
    const isThere = cells.some((cell) => state.items[place(cell)] === item);
    const free = cells.find((cell) => (state.items[place(cell)] ?? -1) < 0);
    if (isThere || free === undefined) continue;
    state.put(day, free, item);
    isLocked[place(free)] = 1;
  }
  indexed.lockedThemes.forEach((theme, week) => {
    if (theme >= 0) state.setTheme(week, theme);
  });
  return isLocked;
}
