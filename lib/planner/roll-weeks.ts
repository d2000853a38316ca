import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, dayBlocks, weekBlocks } from "./model.ts";
import { stateOfSolution } from "./model-plan.ts";
import { tourBounds, type Outline } from "./outline.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";
import { PlanState } from "./state.ts";
import type { WeekCounts } from "./week-counts.ts";

export type RollOptions = {
  /** Items that cost more are left out. */
  readonly lossMax: number;
  readonly limits: Pick<SolveLimits, "nodesMax" | "absoluteGap">;
  /** What the weeks to come are expected to hold; absent: whatever the relaxation would take. */
  readonly counts?: WeekCounts;
};

/**
 * Plans the days of one week after another by the solver, the later weeks present as whole weeks only
 * (a rolling horizon; frequencies first, days afterwards: Balintfy et al. 1978). Undefined when a week
 * has no plan under the outline.
 */
export function rollWeeks(
  indexed: IndexedProblem,
  outline: Outline,
  solver: Solver,
  options: RollOptions,
): PlanState | undefined {
  let state: PlanState | undefined = new PlanState(indexed);
  outline.themes.forEach((theme, week) => state?.setTheme(week, theme));
  for (let week = 0; state && week < indexed.weekCount; week += 1) {
    state = rollWeek(state, week, outline, solver, options);
  }
  return state;
}

/** As asked; where nothing fits, with the later weeks' items open; then with all items. */
function rollWeek(
  state: PlanState,
  week: number,
  outline: Outline,
  solver: Solver,
  { lossMax, limits, counts }: RollOptions,
): PlanState | undefined {
  const { indexed } = state;
  const own = dayBlocks(indexed, [week]);
  const later = weekBlocks(indexed).filter((block) => block.week > week);
  const scope = { blocks: [...own, ...later], themes: outline.themes, fixed: state };
  const model = buildModel(indexed, scope);
  const isInteger = model.program.isInteger.slice();
  model.columns.forEach((column, place) => {
    if (column >= 0 && place >= own.length * indexed.itemCount) isInteger[column] = 0;
  });
  return withSession(solver, { ...model.program, isInteger }, (session) => {
    const tries = [...(counts ? [{ lossMax, counts }] : []), { lossMax }, { lossMax: Infinity }];
    for (const options of tries) {
      const bounds = rollBounds(indexed, model, week, outline, options);
      session.setBounds(bounds.columns, bounds.lower, bounds.upper);
      const { status, values } = session.solve(limits);
      if (status !== "optimal" && status !== "feasible") continue;
      return stateOfSolution(indexed, { ...model, scope: { ...scope, blocks: own } }, values);
    }
    return undefined;
  });
}

/** Tours as settled, dear items left out, later weeks at their counts. Locked items stay. */
function rollBounds(
  { itemCount }: IndexedProblem,
  model: PlanModel,
  week: number,
  { tours, losses }: Outline,
  { lossMax, counts }: Omit<RollOptions, "limits">,
): { columns: number[]; lower: number[]; upper: number[] } {
  const { program } = model;
  const tour = tourBounds(model, tours);
  const bounds = { columns: tour.columns, lower: [...tour.values], upper: [...tour.values] };
  model.columns.forEach((column, place) => {
    if (column < 0) return;
    const block = model.scope.blocks[Math.floor(place / itemCount)];
    const at = (block?.week ?? 0) * itemCount + (place % itemCount);
    const count = counts?.[at] ?? 0;
    const [least, most] = [program.columnLower[column] ?? 0, program.columnUpper[column] ?? 0];
    const isDear = (losses[at] ?? Infinity) > lossMax && lossMax < Infinity;
    const isCounted = counts !== undefined && block?.week !== week;
    bounds.columns.push(column);
    bounds.lower.push(isCounted ? Math.max(least, count) : least);
    bounds.upper.push(isCounted || (isDear && count === 0) ? Math.max(least, count) : most);
  });
  return bounds;
}
