import type { SchedulingProblem } from "#lib/prep/index.ts";

/**
 * The least makespan by trying every start of every task up to a horizon; undefined when nothing fits.
 * For a handful of tasks only; shares no code with the scheduler.
 */
export function exhaustiveMakespan(
  problem: SchedulingProblem,
  horizon: number,
): number | undefined {
  const { tasks, capacities } = problem;
  const starts: number[] = [];
  const use = new Map(
    Object.keys(capacities).map((name) => [name, new Array<number>(horizon).fill(0)]),
  );
  let best: number | undefined;

  const fitsLags = (index: number): boolean =>
    problem.precedences.every(({ before, after, minLag, maxLag = Infinity, from }) => {
      const i = tasks.findIndex(({ id }) => id === before);
      const j = tasks.findIndex(({ id }) => id === after);
      if (Math.max(i, j) !== index) return true;
      const begin = (starts[i] ?? 0) + (from === "start" ? 0 : (tasks[i]?.duration ?? 0));
      const wait = (starts[j] ?? 0) - begin;
      return minLag <= wait && wait <= maxLag;
    });

  const occupy = (index: number, sign: number): boolean => {
    const { duration = 0, demands = {} } = tasks[index] ?? {};
    let isWithin = true;
    for (const [name, amounts] of use) {
      for (let moment = starts[index] ?? 0; moment < (starts[index] ?? 0) + duration; moment += 1) {
        amounts[moment] = (amounts[moment] ?? 0) + sign * (demands[name] ?? 0);
        if ((amounts[moment] ?? 0) > (capacities[name] ?? 0)) isWithin = false;
      }
    }
    return isWithin;
  };

  const place = (index: number, end: number): void => {
    if (best !== undefined && end >= best) return;
    const task = tasks[index];
    if (!task) {
      best = end;
      return;
    }
    for (let start = 0; start + task.duration <= horizon; start += 1) {
      starts[index] = start;
      if (!fitsLags(index)) continue;
      if (occupy(index, 1)) place(index + 1, Math.max(end, start + task.duration));
      occupy(index, -1);
    }
  };
  place(0, 0);
  return best;
}
