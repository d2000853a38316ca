import type { SchedulingProblem } from "#lib/prep/index.ts";

/**
 * Every rule a schedule breaks, in words; empty when it keeps them all. Written from the definition,
 * minute by minute, and shares no code with the scheduler.
 */
export function brokenRules(
  problem: SchedulingProblem,
  starts: Readonly<Record<string, number>>,
  makespan: number,
): string[] {
  const broken: string[] = [];
  const spans = new Map(
    problem.tasks.map(({ id, duration }) => {
      const start = starts[id] ?? Number.NaN;
      return [id, { start, end: start + duration }] as const;
    }),
  );
  for (const [id, { start }] of spans)
    if (!Number.isInteger(start) || start < 0) broken.push(`${id} starts at ${start}`);
  for (const { before, after, minLag, maxLag, from } of problem.precedences) {
    const first = spans.get(before);
    const wait =
      (spans.get(after)?.start ?? Number.NaN) -
      ((from === "start" ? first?.start : first?.end) ?? Number.NaN);
    if (!(wait >= minLag)) broken.push(`${after} waits ${wait} after ${before}, not ${minLag}`);
    if (maxLag !== undefined && !(wait <= maxLag))
      broken.push(`${after} waits ${wait} after ${before}, more than ${maxLag}`);
  }
  for (const [resource, capacity] of Object.entries(problem.capacities)) {
    for (let moment = 0; moment < makespan; moment += 1) {
      let used = 0;
      for (const { id, demands } of problem.tasks) {
        const span = spans.get(id);
        if (span && span.start <= moment && moment < span.end) used += demands[resource] ?? 0;
      }
      if (used > capacity) broken.push(`${used} of ${capacity} ${resource} used at ${moment}`);
    }
  }
  const last = Math.max(0, ...[...spans.values()].map(({ end }) => end));
  if (last !== makespan) broken.push(`the last end is ${last}, not ${makespan}`);
  return broken;
}
