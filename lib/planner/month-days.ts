import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, dayBlocks } from "./model.ts";
import { startValues, stateOfSolution } from "./model-plan.ts";
import { isSolved, type SolveLimits, type Solver, type SolverSession } from "./solver.ts";
import type { PlanState } from "./state.ts";

/** A month day by day for given themes, loaded once and solved in parts. */
export type MonthDays = { readonly model: PlanModel; readonly session: SolverSession };

/** What may change in a step; the rest of the plan stays. */
export type Neighbourhood = {
  /** 1: the item may come or go that day (day * itemCount + item). */
  readonly isOpen: Uint8Array;
  /** Weeks whose tour of shops may change. */
  readonly weeks: readonly number[];
};

/** Loads the month's days for the themes. The session must be closed. */
export function openMonth(indexed: IndexedProblem, themes: Int32Array, solver: Solver): MonthDays {
  const model = buildModel(indexed, { blocks: dayBlocks(indexed), themes });
  return { model, session: solver.open(model.program) };
}

/**
 * The plan made better within a neighbourhood (large neighbourhood search; Shaw 1998), starting from what
 * is there; undefined when the solver finds nothing better or the plan breaks rules.
 */
export function improveWithin(
  { model, session }: MonthDays,
  state: PlanState,
  { isOpen, weeks }: Neighbourhood,
  limits: Pick<SolveLimits, "nodesMax" | "absoluteGap">,
): PlanState | undefined {
  if (state.broken > 0) return undefined;
  const { program, columns } = model;
  const start = startValues(model, state);
  const lower = start.values.slice();
  const upper = start.values.slice();
  const free = new Uint8Array(program.columnCount);
  columns.forEach((column, place) => {
    if (column >= 0 && isOpen[place] === 1) free[column] = 1;
  });
  for (const tour of model.tours) {
    if (weeks.includes(tour.week)) for (const column of tour.columns) free[column] = 1;
  }
  start.columns.forEach((column, place) => {
    if (free[column] !== 1) return;
    lower[place] = program.columnLower[column] ?? 0;
    upper[place] = program.columnUpper[column] ?? 0;
  });
  session.setBounds(start.columns, lower, upper);
  const solution = session.solve({ ...limits, start });
  if (!isSolved(solution)) return undefined;
  const next = stateOfSolution(state.indexed, model, solution.values);
  return next.worth > state.worth + 1e-6 ? next : undefined;
}
