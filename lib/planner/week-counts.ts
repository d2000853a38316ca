import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";
import { startValues } from "./model-plan.ts";
import { pairsOf } from "./neighbourhoods.ts";
import { isSolved, withSession, type Solution, type Solver, type SolverSession } from "./solver.ts";
import type { PlanState } from "./state.ts";

/** What each week holds before anything has its day. */
export type CountedMonth = {
  /** How often each item comes in a week (week * itemCount + item). */
  readonly counts: Int32Array;
  /** Tour of shops of each week, a position in the problem's `tours`, -1: shops do not count. */
  readonly tours: Int32Array;
};

type CountStep =
  | { readonly kind: "bound"; readonly bound: number }
  | { readonly kind: "counts"; readonly counted: CountedMonth };

/** The program that decides only which items come in which week; its bound holds for every plan. */
export function weekModel(indexed: IndexedProblem, themes: Int32Array): PlanModel {
  return buildModel(indexed, { blocks: weekBlocks(indexed), themes });
}

/** Nodes of a neighbourhood's tree: beyond them little is found. */
const NODES_MAX = 50;
/** Proven gap in points at which a neighbourhood counts as solved. */
const STEP_GAP_POINTS = 0.05;

/**
 * Which items come in which week (frequencies first: Balintfy et al. 1978): the root of the tree, told as
 * a bound as it falls, then weeks and pairs of weeks solved anew (large neighbourhood search; Shaw 1998).
 * Whole weeks lack the symmetry of their days: a month of them is solved to within a few points in the
 * time that one week of days takes. Where the root finds nothing, `start` counts; undefined: that
 * breaks rules. The root's own counts are told before they are bettered.
 */
export function countItems(
  indexed: IndexedProblem,
  model: PlanModel,
  solver: Solver,
  start: PlanState,
  tell: (step: CountStep) => void,
): CountedMonth | undefined {
  return withSession(solver, model.program, (session) => {
    const watch = (bound: number): void => tell({ kind: "bound", bound });
    const root = session.solve({ nodesMax: 1, watch });
    if (root.status === "infeasible") return undefined;
    watch(root.bound);
    if (!isSolved(root) && start.broken > 0) return undefined;
    const { columns, values } = startValues(model, start);
    const climb: Climb = { model, session, columns, values, worth: start.points };
    if (isSolved(root)) goOnFrom(climb, root);
    if (root.status !== "optimal") {
      tell({ kind: "counts", counted: countedOf(indexed, climb) });
      const weeks = [...Array(indexed.weekCount).keys()];
      for (const freed of [...weeks.map((week) => [week]), ...pairsOf(weeks)])
        improve(climb, freed);
    }
    return countedOf(indexed, climb);
  });
}

type Climb = {
  readonly model: PlanModel;
  readonly session: SolverSession;
  /** The whole-number columns. */
  readonly columns: readonly number[];
  values: readonly number[];
  worth: number;
};

function goOnFrom(climb: Climb, { values, objective }: Solution): void {
  climb.values = climb.columns.map((column) => Math.round(values[column] ?? 0));
  climb.worth = objective;
}

/** The freed weeks solved anew, the others as they are. */
function improve(climb: Climb, weeks: readonly number[]): void {
  const { model, session, columns, values } = climb;
  const { program, columnWeeks } = model;
  const isFree = (column: number): boolean => weeks.includes(columnWeeks[column] ?? -1);
  const bounds = (free: Float64Array): number[] =>
    columns.map((column, at) => (isFree(column) ? (free[column] ?? 0) : (values[at] ?? 0)));
  session.setBounds(columns, bounds(program.columnLower), bounds(program.columnUpper));
  const limits = { nodesMax: NODES_MAX, absoluteGap: STEP_GAP_POINTS };
  const next = session.solve({ ...limits, start: { columns, values } });
  if (isSolved(next) && next.objective > climb.worth + 1e-6) goOnFrom(climb, next);
}

function countedOf({ weekCount, itemCount }: IndexedProblem, climb: Climb): CountedMonth {
  const { columns, scope, tours, program } = climb.model;
  const values = new Float64Array(program.columnCount);
  climb.columns.forEach((column, at) => (values[column] = climb.values[at] ?? 0));
  const counts = new Int32Array(weekCount * itemCount);
  columns.forEach((column, place) => {
    const week = scope.blocks[Math.floor(place / itemCount)]?.week ?? 0;
    if (column >= 0) counts[week * itemCount + (place % itemCount)] = values[column] ?? 0;
  });
  const chosen = new Int32Array(weekCount).fill(-1);
  for (const { week, columns: own } of tours) {
    chosen[week] = own.findIndex((column) => (values[column] ?? 0) > 0.5);
  }
  return { counts, tours: chosen };
}
