import loadHighs from "highs";
import type { SolveMip } from "#lib/shopping/index.ts";

type Column = { readonly Name: string; readonly Primal: number };

/**
 * HiGHS in this thread, for tests and benches: the solver whose optimum ours is compared with. Without
 * a proof within the limit it answers nothing, so that a comparison can't pass by accident.
 */
export function highsMip(secondsMax = 60): SolveMip {
  return async ({ lp, gap }) => {
    const highs = await loadHighs();
    const options = { output_flag: false, mip_rel_gap: gap, time_limit: secondsMax };
    const solution = highs.solve(lp, options);
    if (solution.Status !== "Optimal") return { values: undefined, bound: -Infinity };
    const values: Record<string, number> = {};
    const columns: readonly Column[] = Object.values(solution.Columns);
    for (const { Name, Primal } of columns) values[Name] = Primal;
    return { values, bound: solution.ObjectiveValue };
  };
}
