import { checkProblem } from "./check-problem.ts";
import { energyBound } from "./energy-bound.ts";
import { findGoodSchedule, type Found } from "./heuristic/improve.ts";
import { buildNetwork, type Network } from "./network.ts";
import type { NoSchedule, Schedule, SchedulingProblem, Undecided } from "./problem.ts";
import { buildModel } from "./solver/model.ts";
import { Search } from "./solver/search.ts";

/** Steps that `schedule` may take when nothing else is said. */
export const USUAL_STEPS = 60_000;

/** Cells of the time table that the first heuristic may fill. */
const TABLE_MAX = 2_000_000;

/**
 * The schedule with the least makespan, or a proof that there is none; within a budget of steps (choices
 * and conflicts of the search), so that every machine gives the same answer. A larger budget goes on
 * from where the smaller one ends: its makespan is never later and its bound never lower.
 *
 * Lags run from the end of `before` to the start of `after`; see `Precedence`. Throws on a malformed
 * problem (an id that is missing or twice, a negative duration or demand, a fraction).
 */
export function schedule(
  problem: SchedulingProblem,
  budget: number = USUAL_STEPS,
): Schedule | NoSchedule | Undecided {
  checkProblem(problem);
  const network = buildNetwork(problem);
  if ("kind" in network) return { conflict: network };
  const bound = energyBound(network);
  const horizon = horizonOf(network);
  const first = firstSchedule(network, horizon, bound, budget);
  if (first && first.end <= bound) return written(network, first.starts, first.end, bound);
  const model = buildModel(network, first?.end ?? horizon, bound);
  const search = new Search(model, first?.starts, first?.end ?? 0);
  const outcome = search.run(budget - (first?.steps ?? 0));
  if (outcome === "impossible") return { conflict: { kind: "search", steps: search.steps } };
  if (!search.best) return { undecided: true, bound: search.bound };
  const { best, bestEnd } = search;
  return written(network, best, bestEnd, outcome === "solved" ? bestEnd : search.bound);
}

function written(network: Network, starts: Int32Array, makespan: number, bound: number): Schedule {
  return {
    starts: Object.fromEntries(network.ids.map((id, task) => [id, starts[task] ?? 0])),
    makespan,
    bound,
    optimal: bound === makespan,
  };
}

/** A good schedule to begin with, where tasks can be placed one after another and time fits a table. */
function firstSchedule(
  network: Network,
  horizon: number,
  bound: number,
  steps: number,
): Found | undefined {
  if (network.hasRings || horizon * network.resources.length > TABLE_MAX) return undefined;
  return findGoodSchedule(network, horizon, bound, steps);
}

/**
 * An end that the best schedule, if there is one, does not pass: with every task moved as early as it
 * will go, no stretch of time passes without a task running or a lag that has begun.
 */
function horizonOf({ durations, arcs }: Network): number {
  return durations.reduce((sum, duration, task) => {
    const lags = arcs.map(({ from, lag }) => (from === task ? lag : 0));
    return sum + Math.max(duration, ...lags);
  }, 0);
}
