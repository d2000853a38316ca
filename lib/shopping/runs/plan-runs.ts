import { compileRuns } from "./compile.ts";
import { SAME_CENTS } from "./improve.ts";
import { mipOf, type SolveMip, tripsFromMip } from "./mip.ts";
import { planOf } from "./outcome.ts";
import type { RunPlan, RunProblem } from "./problem.ts";
import { type SearchOutcome, searchTrips } from "./search.ts";
import { type Tally, tallyOf } from "./tally.ts";

/** How long to search: item plans worked out, and the share of the cost that need not be proven. */
export type RunBudget = { readonly steps: number; readonly gap: number };

export const RUN_BUDGET: RunBudget = { steps: 400_000, gap: 0 };

/**
 * Which shop on which day, and how many packs of what, so that every food is within its life when it
 * is eaten, nothing is bought that stock covers, and money, trips and waste together cost least. Needs
 * that no trip can serve are listed as unmet, never dropped in silence. The same problem and budget
 * give the same plan; the plan says whether it is proven least, and by how much it could be beaten.
 */
export function planRuns(problem: RunProblem, budget: RunBudget = RUN_BUDGET): RunPlan {
  const tally = tallyOf(compileRuns(problem));
  return planOf(tally, searchTrips(tally, budget));
}

/**
 * As `planRuns`, and where its own budget proves no optimum, a mixed-integer solver is handed the rest:
 * it starts from the best trips found and may better them or the bound. Without opened lives its
 * program is the whole problem; with them it is a relaxation, so its bound holds and its trips are
 * costed anew.
 */
export async function planRunsWithSolver(
  problem: RunProblem,
  solve: SolveMip,
  budget: RunBudget = RUN_BUDGET,
): Promise<RunPlan> {
  const tally = tallyOf(compileRuns(problem));
  const found = searchTrips(tally, budget);
  if (found.proven) return planOf(tally, found);
  return planOf(tally, await improvedBy(solve, tally, found, budget.gap));
}

async function improvedBy(
  solve: SolveMip,
  tally: Tally,
  found: SearchOutcome,
  gap: number,
): Promise<SearchOutcome> {
  const usedCents = tally.model.items.reduce((sum, item) => sum + item.usedCents, 0);
  const answer = await solve(mipOf(tally.model, found.trips, gap));
  const trips = tripsFromMip(tally.model, answer);
  const cost = trips ? tally.costOf(trips) : Infinity;
  const best = trips && cost < found.cost ? { trips, cost } : found;
  const bound = Math.min(best.cost, Math.max(found.bound, answer.bound - usedCents));
  const proven = bound >= best.cost - SAME_CENTS;
  return { trips: best.trips, cost: best.cost, bound, proven };
}
