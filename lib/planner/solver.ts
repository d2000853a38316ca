import type { LinearProgram } from "./program.ts";

/** The mixed-integer solver as the planner sees it; handed in by whoever runs the planner. */
export type Solver = {
  /** Loads a program; `isRelaxed` drops "whole numbers only". The session must be closed. */
  readonly open: (program: LinearProgram, isRelaxed?: boolean) => SolverSession;
};

/** One loaded program: changed and solved again, each solve starting from the last. */
export type SolverSession = {
  readonly setBounds: (
    columns: readonly number[],
    lower: readonly number[],
    upper: readonly number[],
  ) => void;
  readonly setCosts: (costs: Float64Array) => void;
  readonly solve: (limits?: SolveLimits) => Solution;
  readonly close: () => void;
};

export type SolveLimits = {
  /** Stop when the proven gap relative to the objective is at most this. */
  readonly relativeGap?: number;
  /** Stop when the proven gap in points is at most this. */
  readonly absoluteGap?: number;
  readonly nodesMax?: number;
  /** For watching users only: results under a time limit are not reproducible. */
  readonly secondsMax?: number;
  /** Called while solving with the bound as it falls. */
  readonly watch?: (bound: number) => void;
  /** A known solution to start from: its whole-number columns; the solver works out the others. */
  readonly start?: { readonly columns: readonly number[]; readonly values: readonly number[] };
};

export type Solution = {
  /** optimal: within the gap asked for; feasible: a limit came first. */
  readonly status: "optimal" | "feasible" | "infeasible" | "unknown";
  readonly objective: number;
  /** Nothing better than this exists. */
  readonly bound: number;
  readonly values: Float64Array;
  /** Of a relaxed solve: what one unit more of each row's limit would add. Else empty. */
  readonly rowDuals: Float64Array;
  /** Of a relaxed solve: what forcing one more unit of each column would change. Else empty. */
  readonly columnDuals: Float64Array;
};

/** True when a solve left values to use, the best there are or not. */
export function isSolved({ status }: Pick<Solution, "status">): boolean {
  return status === "optimal" || status === "feasible";
}

/** Opens, uses and closes a session. */
export function withSession<Value>(
  solver: Solver,
  program: LinearProgram,
  work: (session: SolverSession) => Value,
  isRelaxed = false,
): Value {
  const session = solver.open(program, isRelaxed);
  try {
    return work(session);
  } finally {
    session.close();
  }
}
