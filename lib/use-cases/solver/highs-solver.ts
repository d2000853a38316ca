import loadHighs, { type Highs, type Model } from "highs";
import type {
  LinearProgram,
  Solution,
  SolveLimits,
  Solver,
  SolverSession,
} from "#lib/planner/index.ts";

/** Model status codes of the solver's C interface that leave a usable outcome. */
const OPTIMAL = 7;
/** The solver takes finite limits only: this is a year. */
const NO_LIMIT_S = 31_536_000;
const INFEASIBLE = [8, 9];
/** Cuts kept beyond those in use: more of them took up to 70 MB of a month and gained nothing. */
const CUTS_MOST = 200;

/**
 * The HiGHS solver (Huangfu & Hall, Math. Prog. Comp. 10, 2018; WebAssembly build) behind the planner's
 * solver type. Solving blocks the thread: load it in a worker, or in tests.
 */
export async function loadSolver(): Promise<Solver> {
  const highs = await loadHighs();
  return { open: (program, isRelaxed = false) => openSession(highs, program, isRelaxed) };
}

function openSession(highs: Highs, program: LinearProgram, isRelaxed: boolean): SolverSession {
  const isMip = !isRelaxed && program.isInteger.includes(1);
  const model = highs.createModel({
    numCols: program.columnCount,
    numRows: program.rowCount,
    sense: highs.constants.objectiveSense.maximize,
    colCost: program.costs,
    colLower: program.columnLower,
    colUpper: program.columnUpper,
    rowLower: program.rowLower,
    rowUpper: program.rowUpper,
    matrix: {
      format: "csr",
      numRows: program.rowCount,
      numCols: program.columnCount,
      starts: program.rowStarts,
      indices: program.rowColumns,
      values: program.rowValues,
    },
    ...(isMip ? { integrality: Int32Array.from(program.isInteger) } : {}),
  });
  model.options.set({ mip_pool_soft_limit: CUTS_MOST });
  return {
    setBounds: (columns, lower, upper) => {
      columns.forEach((column, place) => {
        model.changeColBounds(column, lower[place] ?? 0, upper[place] ?? 0);
      });
    },
    setCosts: (costs) => {
      const all = { kind: "range", from: 0, to: program.columnCount - 1 } as const;
      model.changeColsCost(all, costs);
    },
    solve: (limits = {}) => runModel(model, limits),
    close: () => model.dispose(),
  };
}

/** Solves a loaded model within limits. Without whole-number columns its optimum is its bound, with duals. */
export function runModel(model: Model, limits: SolveLimits): Solution {
  // The time limit counts all solves of a model together.
  model.zeroAllClocks();
  model.options.set({
    output_flag: false,
    mip_rel_gap: limits.relativeGap ?? 1e-6,
    mip_abs_gap: limits.absoluteGap ?? 1e-6,
    // Restarts of the tree cost seconds and, on months, gained nothing.
    mip_allow_restart: false,
    mip_max_nodes: limits.nodesMax ?? 2_147_483_647,
    time_limit: limits.secondsMax ?? NO_LIMIT_S,
  });
  if (limits.start) {
    model.setSolution({ indices: limits.start.columns, values: limits.start.values });
  }
  model.run(limits.watch ? callbacks(limits.watch) : {});
  const code = model.getModelStatus();
  const hasValues = model.info.get("primal_solution_status") === 2;
  const objective = model.getObjectiveValue();
  const solution = model.getSolution();
  // Nodes are counted only where whole numbers are asked for.
  const isRelaxed = Number(model.info.get("mip_node_count")) < 0;
  return {
    status: statusOf(code, hasValues),
    objective,
    bound: isRelaxed ? objective : Number(model.info.get("mip_dual_bound")),
    values: solution.colValue,
    rowDuals: isRelaxed ? solution.rowDual : new Float64Array(0),
    columnDuals: isRelaxed ? solution.colDual : new Float64Array(0),
  };
}

/** Callback types of the solver's C interface: a better solution, a line of its log. */
const IMPROVING_SOLUTION = 4;
const MIP_LOGGING = 5;

function callbacks(watch: NonNullable<SolveLimits["watch"]>): Parameters<Model["run"]>[0] {
  let lowest = Infinity;
  const onBound = ({ data }: { data: { mip_dual_bound?: number } }): undefined => {
    const bound = data.mip_dual_bound;
    if (bound === undefined || !(bound < lowest - 1e-6)) return;
    lowest = bound;
    watch(bound);
  };
  return { [IMPROVING_SOLUTION]: onBound, [MIP_LOGGING]: onBound };
}

function statusOf(code: number, hasValues: boolean): Solution["status"] {
  if (code === OPTIMAL) return "optimal";
  if (INFEASIBLE.includes(code)) return "infeasible";
  return hasValues ? "feasible" : "unknown";
}
