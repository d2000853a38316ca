import type { SchedulingProblem } from "#lib/prep/index.ts";

/** "start(to) ≥ start(from) + lag". */
type Arc = readonly [from: number, to: number, lag: number];

/**
 * The least makespan by another way than the scheduler's: start all as early as the lags allow; where a
 * resource is overfull, one of two tasks there must end before the other starts, so try every such pair
 * (after Bartusch, Möhring & Radermacher 1988, Annals of OR 16:201–240). Undefined: no schedule exists;
 * "gave up" after so many nodes. Shares no code with the scheduler.
 */
export function leastByPairs(
  problem: SchedulingProblem,
  nodesMax: number,
): number | undefined | "gave up" {
  const { tasks } = problem;
  const indexOf = new Map(tasks.map(({ id }, index) => [id, index]));
  const durationOf = (task: number): number => tasks[task]?.duration ?? 0;
  const arcs = problem.precedences.flatMap(({ before, after, minLag, maxLag, from }): Arc[] => {
    const [one, other] = [indexOf.get(before) ?? -1, indexOf.get(after) ?? -1];
    const shift = from === "start" ? 0 : durationOf(one);
    const least: Arc = [one, other, minLag + shift];
    return maxLag === undefined ? [least] : [least, [other, one, -(maxLag + shift)]];
  });
  const lags = arcs.reduce((sum, [, , lag]) => sum + Math.abs(lag), 0);
  const late = lags + tasks.reduce((sum, { duration }) => sum + duration, 0);
  let [best, nodes] = [Infinity, 0];
  const visit = (own: readonly Arc[]): void => {
    nodes += 1;
    if (nodes > nodesMax) return;
    const starts = earliestStarts(tasks.length, own, late);
    if (!starts) return;
    const end = Math.max(0, ...starts.map((start, task) => start + durationOf(task)));
    if (end >= best) return;
    const crowd = overfull(problem, starts);
    if (!crowd) best = end;
    else
      for (const one of crowd)
        for (const other of crowd)
          if (one !== other) visit([...own, [one, other, durationOf(one)]]);
  };
  visit(arcs);
  if (nodes > nodesMax) return "gave up";
  return best === Infinity ? undefined : best;
}

/** Longest paths from 0 by relaxing over and over; undefined when they pass `late`: a ring grows. */
function earliestStarts(tasks: number, arcs: readonly Arc[], late: number): number[] | undefined {
  const starts = new Array<number>(tasks).fill(0);
  for (let isMoved = true; isMoved;) {
    isMoved = false;
    for (const [from, to, lag] of arcs) {
      const start = (starts[from] ?? 0) + lag;
      if (start <= (starts[to] ?? 0)) continue;
      if (start > late) return undefined;
      starts[to] = start;
      isMoved = true;
    }
  }
  return starts;
}

/** The tasks of the first moment at which some resource is overfull, those that use it. */
function overfull(
  { tasks, capacities }: SchedulingProblem,
  starts: readonly number[],
): number[] | undefined {
  for (const moment of [...new Set(starts)].sort((one, other) => one - other)) {
    for (const [resource, capacity] of Object.entries(capacities)) {
      const users = tasks.flatMap(({ duration, demands }, task) => {
        const start = starts[task] ?? 0;
        const isRunning = start <= moment && moment < start + duration;
        return isRunning && (demands[resource] ?? 0) > 0 ? [task] : [];
      });
      const used = users.reduce((sum, task) => sum + (tasks[task]?.demands[resource] ?? 0), 0);
      if (used > capacity) return users;
    }
  }
  return undefined;
}
