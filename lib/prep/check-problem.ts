import type { SchedulingProblem } from "./problem.ts";

/** Beyond this a time could overflow the solver's 32-bit sums. */
const LARGEST = 1_000_000;

/** Throws on a problem that states no question: such a problem is the caller's mistake. */
export function checkProblem({ tasks, precedences, capacities }: SchedulingProblem): void {
  const ids = new Set(tasks.map(({ id }) => id));
  if (ids.size < tasks.length) throw new RangeError("Two tasks have one id.");
  for (const { id, duration, demands } of tasks) {
    checkAmount(duration, `the duration of ${id}`);
    for (const [resource, demand] of Object.entries(demands))
      checkAmount(demand, `the demand of ${id} for ${resource}`);
  }
  for (const [resource, capacity] of Object.entries(capacities))
    checkAmount(capacity, `the capacity of ${resource}`);
  for (const { before, after, minLag, maxLag } of precedences) {
    for (const id of [before, after])
      if (!ids.has(id)) throw new RangeError(`A precedence names ${id}, which is no task.`);
    checkAmount(Math.abs(minLag), `the least lag from ${before} to ${after}`);
    if (maxLag !== undefined)
      checkAmount(Math.abs(maxLag), `the greatest lag from ${before} to ${after}`);
  }
}

function checkAmount(amount: number, what: string): void {
  if (!Number.isInteger(amount) || amount < 0 || amount > LARGEST)
    throw new RangeError(`Expected a whole number up to ${LARGEST} for ${what}, not ${amount}.`);
}
