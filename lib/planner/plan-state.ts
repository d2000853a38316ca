import { applyLocks } from "./cell-choices.ts";
import type { IndexedProblem } from "./indexed.ts";
import type { Plan } from "./problem.ts";
import { PlanState } from "./state.ts";

/** The plan a state stands for. */
export function planOf(state: PlanState): Plan {
  const { problem, daysOfWeek } = state.indexed;
  return {
    weeks: problem.weeks.map((week, number) => ({
      monday: week.monday,
      themeId: problem.themes[state.themes[number] ?? -1]?.id ?? null,
      lunches: week.days.map(({ date }, place) => {
        const items = [...state.itemsOf(daysOfWeek[number]?.[place] ?? 0)];
        const itemIds = items.map((item) => problem.items[item]?.id);
        return { date, itemIds: itemIds.filter((id) => id !== undefined) };
      }),
    })),
  };
}

/** A state holding the locks and a plan; items the problem does not know or has no place for stay out. */
export function stateOf(indexed: IndexedProblem, plan: Plan): PlanState {
  const state = new PlanState(indexed);
  applyLocks(state);
  for (const { monday, themeId, lunches } of plan.weeks) {
    const week = indexed.problem.weeks.findIndex((entry) => entry.monday === monday);
    const theme = themeId === null ? undefined : indexed.themeIndex.get(themeId);
    if (week >= 0 && theme !== undefined) state.setTheme(week, theme);
    for (const { date, itemIds } of lunches) {
      const day = indexed.dayIndex.get(date);
      if (day !== undefined)
        for (const id of itemIds) putItem(state, day, indexed.itemIndex.get(id));
    }
  }
  return state;
}

function putItem(state: PlanState, day: number, item: number | undefined): void {
  if (item === undefined) return;
  const { cells, cellsOfPart, partOfItem } = state.indexed;
  const places = cellsOfPart[partOfItem[item] ?? -1] ?? [];
  const at = (cell: number): number => state.items[day * cells.length + cell] ?? -1;
  if (places.some((cell) => at(cell) === item)) return;
  const free = places.find((cell) => at(cell) < 0);
  if (free !== undefined) state.put(day, free, item);
}
