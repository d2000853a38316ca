import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { PlanState } from "./state.ts";
import { bestTour } from "./index-shops.ts";
import type { SolveLimits } from "./solver.ts";

/** The plan a solved day model stands for. Only for models with single days as blocks. */
export function stateOfSolution(
  indexed: IndexedProblem,
  model: PlanModel,
  values: Float64Array,
): PlanState {
  const { blocks, themes } = model.scope;
  const state = new PlanState(indexed);
  themes?.forEach((theme, week) => state.setTheme(week, theme));
  model.themeColumns.forEach((column, place) => {
    if (column < 0 || (values[column] ?? 0) < 0.5) return;
    const week = Math.floor(place / indexed.themeCount);
    state.setTheme(week, place % indexed.themeCount);
  });
  blocks.forEach(({ days }, block) => {
    const day = days[0] ?? 0;
    const from = block * indexed.itemCount;
    const chosen = [...Array(indexed.itemCount).keys()].filter((item) => {
      const column = model.columns[from + item] ?? -1;
      return column >= 0 && (values[column] ?? 0) > 0.5;
    });
    putDay(state, day, chosen);
  });
  return state;
}

/** Makes a day hold exactly these items; what is there already keeps its cell. */
function putDay(state: PlanState, day: number, chosen: readonly number[]): void {
  const { cells, partOfItem } = state.indexed;
  cells.forEach((_, cell) => state.put(day, cell, -1));
  cells.forEach(({ part }, cell) => {
    const from = cells.findIndex((entry) => entry.part === part);
    const item = chosen.filter((number) => partOfItem[number] === part)[cell - from];
    if (item !== undefined) state.put(day, cell, item);
  });
}

/** The whole-number columns of a plan, as a start for the solver. */
export function startValues(model: PlanModel, state: PlanState): NonNullable<SolveLimits["start"]> {
  const { isInteger } = model.program;
  const values = itemAndThemeValues(model, state);
  for (const { week, columns } of model.tours) {
    const column = columns[state.indexed.tours.indexOf(tourOf(state, week))];
    if (column !== undefined) values[column] = 1;
  }
  const columns = [...isInteger.keys()].filter((column) => isInteger[column]);
  return { columns, values: columns.map((column) => values[column] ?? 0) };
}

function itemAndThemeValues(model: PlanModel, state: PlanState): Float64Array {
  const { itemCount, themeCount } = state.indexed;
  const values = new Float64Array(model.program.columnCount);
  model.scope.blocks.forEach(({ days }, block) => {
    for (const day of days) {
      for (const item of state.itemsOf(day)) {
        const column = item < 0 ? -1 : (model.columns[block * itemCount + item] ?? -1);
        if (column >= 0) values[column] = (values[column] ?? 0) + 1;
      }
    }
  });
  state.themes.forEach((theme, week) => {
    const column = theme < 0 ? -1 : (model.themeColumns[week * themeCount + theme] ?? -1);
    if (column >= 0) values[column] = 1;
  });
  return values;
}

/** The easiest tour for the items of a week. */
function tourOf(state: PlanState, week: number): IndexedProblem["tours"][number] {
  const { indexed } = state;
  const sets = (indexed.daysOfWeek[week] ?? [])
    .flatMap((day) => [...state.itemsOf(day)])
    .map((item) => (item < 0 ? 0 : (indexed.shopSets[indexed.shopSetOfItem[item] ?? 0] ?? 0)));
  return bestTour(indexed.tours, sets);
}
