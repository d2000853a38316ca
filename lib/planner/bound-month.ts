import { indexProblem } from "./index-problem.ts";
import type { PlanProblem } from "./problem.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";
import { weekModel } from "./week-counts.ts";

export type BoundLimits = Pick<SolveLimits, "nodesMax" | "secondsMax" | "relativeGap"> & {
  /** What may not come in fractions: tours of shops only, or all that is chosen. */
  readonly whole: "tours" | "items";
};

/**
 * An upper bound on the points of every plan with the given themes, from the week model. Whole tours of
 * shops are most of what fractions gain, and proven within seconds; whole items take longer for a little
 * more. Tells each lower bound and returns the last; blocks until a limit or the optimum.
 */
export function boundMonth(
  problem: PlanProblem,
  themeIds: readonly (string | null)[],
  solver: Solver,
  { whole, ...limits }: BoundLimits,
  tell: (bound: number) => void,
): number {
  const indexed = indexProblem(problem);
  const themes = Int32Array.from(themeIds, (id) =>
    id === null ? -1 : (indexed.themeIndex.get(id) ?? -1),
  );
  const model = weekModel(indexed, themes);
  const isTour = new Uint8Array(model.program.columnCount);
  for (const { columns } of model.tours) for (const column of columns) isTour[column] = 1;
  const program = whole === "items" ? model.program : { ...model.program, isInteger: isTour };
  const watch: SolveLimits["watch"] = (event) => {
    if (event.kind === "bound") tell(event.bound);
  };
  const { bound } = withSession(solver, program, (session) => session.solve({ ...limits, watch }));
  tell(bound);
  return bound;
}
