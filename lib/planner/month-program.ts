import { indexProblem } from "./index-problem.ts";
import { buildModel, dayBlocks } from "./model.ts";
import type { PlanProblem } from "./problem.ts";
import type { LinearProgram } from "./program.ts";

/**
 * The whole question as one program, day by day and themes free: its optimum is the best plan's points.
 * For a second solver and for small questions; a month of it takes a solver hours.
 */
export function monthProgram(problem: PlanProblem): LinearProgram {
  const indexed = indexProblem(problem);
  return buildModel(indexed, { blocks: dayBlocks(indexed), themes: null }).program;
}
