import { indexProblem } from "./index-problem.ts";
import type { PlanProblem } from "./problem.ts";
import type { LinearProgram } from "./program.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";
import { weekModel } from "./week-counts.ts";

export type BoundLimits = Pick<SolveLimits, "nodesMax" | "secondsMax" | "relativeGap">;

/**
 * Upper bounds on the points of every plan with the given themes, from the week model: first with whole
 * tours of shops only, which are most of what fractions gain and take seconds, then with whole items too.
 * Tells each lower bound and returns the last; blocks until a limit or the optimum.
 */
export function boundMonth(
  problem: PlanProblem,
  themeIds: readonly (string | null)[],
  solver: Solver,
  limits: BoundLimits,
  tell: (bound: number) => void,
): number {
  const indexed = indexProblem(problem);
  const themes = Int32Array.from(themeIds, (id) =>
    id === null ? -1 : (indexed.themeIndex.get(id) ?? -1),
  );
  const model = weekModel(indexed, themes);
  let lowest = Infinity;
  const take = (bound: number): void => {
    if (!(bound < lowest - 1e-6)) return;
    lowest = bound;
    tell(bound);
  };
  const watch: SolveLimits["watch"] = (event) => {
    if (event.kind === "bound") take(event.bound);
  };
  const solve = (program: LinearProgram): void => {
    const { bound } = withSession(solver, program, (session) =>
      session.solve({ ...limits, watch }),
    );
    take(bound);
  };
  const isTour = new Uint8Array(model.program.columnCount);
  for (const { columns } of model.tours) for (const column of columns) isTour[column] = 1;
  if (model.tours.length > 0) solve({ ...model.program, isInteger: isTour });
  solve(model.program);
  return lowest;
}
