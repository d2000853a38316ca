import { randomFrom } from "#lib/base/index.ts";
import type { Precedence, SchedulingProblem } from "#lib/prep/index.ts";

const RESOURCES = 5;

/**
 * Random projects with maximal lags, in the manner of the published generator (ProGen/max, Schwindt
 * 1998, from memory: start-to-start lags, 5 renewable resources, lags that close rings). Not its
 * instances, which are not at hand: shares found here are our own figures.
 */
export function maxLagProjects(
  count: number,
  activities: number,
  seed: string,
): SchedulingProblem[] {
  const random = randomFrom(`${seed} ${activities}`);
  const between = (least: number, most: number): number => least + random.below(most - least + 1);
  return Array.from({ length: count }, (): SchedulingProblem => {
    const tasks = Array.from({ length: activities }, (_, index) => ({
      id: `${index}`,
      duration: between(1, 10),
      demands: Object.fromEntries(
        Array.from({ length: RESOURCES }, (_, resource) => [
          `r${resource}`,
          random.next() < 0.5 ? between(1, 5) : 0,
        ]),
      ),
    }));
    const precedences: Precedence[] = [];
    /** Longest path by least lags, row by row. */
    const path = tasks.map(() => new Map<number, number>());
    for (let to = 1; to < activities; to += 1) {
      for (let arcs = between(1, 2); arcs > 0; arcs -= 1) {
        const from = random.below(to);
        const minLag = between(1, Math.ceil(1.5 * (tasks[from]?.duration ?? 1)));
        precedences.push({ before: `${from}`, after: `${to}`, minLag, from: "start" });
        path.forEach((lengths, start) => {
          const until = start === from ? 0 : lengths.get(from);
          if (until !== undefined) lengths.set(to, Math.max(lengths.get(to) ?? 0, until + minLag));
        });
      }
      for (const [start, lengths] of path.entries()) {
        const length = lengths.get(to);
        if (length === undefined || random.next() > 0.08) continue;
        const maxLag = length + random.below(1 + Math.ceil(1.2 * length));
        precedences.push({
          before: `${start}`,
          after: `${to}`,
          minLag: length,
          maxLag,
          from: "start",
        });
      }
    }
    const capacities = Object.fromEntries(
      Array.from({ length: RESOURCES }, (_, resource) => {
        const most = Math.max(0, ...tasks.map(({ demands }) => demands[`r${resource}`] ?? 0));
        return [`r${resource}`, most + between(0, 4)];
      }),
    );
    return { tasks, precedences, capacities };
  });
}
