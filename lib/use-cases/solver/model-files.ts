import loadHighs, { type Model } from "highs";
import { isSolved, type Solution, type SolveLimits } from "#lib/planner/index.ts";
import type { Mip, MipAnswer } from "#lib/shopping/index.ts";
import { runModel } from "./highs-solver.ts";

/** Solves a model file in MPS format, as published benchmarks come. Minimises unless it says otherwise. */
export async function solveMps(file: Uint8Array, limits: SolveLimits = {}): Promise<Solution> {
  const highs = await loadHighs();
  return highs.withModel({ format: "mps", data: file }, (model) => runModel(model, limits));
}

/**
 * Solves a program in LP text within seconds, from its known start. Values by column name, undefined
 * when none were found; the bound is proven in any case. Blocks the thread.
 */
export async function solveLp({ lp, start, gap }: Mip, secondsMax: number): Promise<MipAnswer> {
  const highs = await loadHighs();
  return highs.withModel({ format: "lp", data: lp }, (model) => {
    const known = Object.entries(start).map(([name, value]) => [model.getColByName(name), value]);
    const limits: SolveLimits = {
      relativeGap: gap,
      secondsMax,
      ...(known.length > 0
        ? { start: { columns: known.map(([at = 0]) => at), values: known.map(([, v = 0]) => v) } }
        : {}),
    };
    const solution = runModel(model, limits);
    const { bound, values } = solution;
    return { values: isSolved(solution) ? byName(model, values) : undefined, bound };
  });
}

function byName(model: Model, values: Float64Array): Record<string, number> {
  return Object.fromEntries([...values].map((value, column) => [model.getColName(column), value]));
}
