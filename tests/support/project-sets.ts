import { randomFrom, type Random } from "#lib/base/index.ts";
import type { SchedulingProblem } from "#lib/prep/index.ts";

/** What a set of projects varies: arcs per activity, resource factor, resource strength. */
export type Cell = {
  readonly complexity: number;
  readonly factor: number;
  readonly strength: number;
};

const ACTIVITIES = 30;
const RESOURCES = 4;
/** Activities without a predecessor, and without a successor. */
const ENDS = 3;
const NEIGHBOURS_MAX = 3;

/** The 48 cells of the j30 set (Kolisch, Sprecher & Drexl 1995, Management Science 41:1693–1703). */
export const J30_CELLS: readonly Cell[] = [1.5, 1.8, 2.1].flatMap((complexity) =>
  [0.25, 0.5, 0.75, 1].flatMap((factor) =>
    [0.2, 0.5, 0.7, 1].map((strength) => ({ complexity, factor, strength })),
  ),
);

/**
 * A random project in the manner of the published generator (ProGen, as above; from memory): 30
 * activities of 1–10 units on 4 resources. Not its instances, of which few are at hand.
 */
export function j30Project(cell: Cell, seed: number): SchedulingProblem {
  const random = randomFrom(`j30 ${JSON.stringify(cell)} ${seed}`);
  const durations = Array.from({ length: ACTIVITIES }, () => 1 + random.below(10));
  const successors = network(cell.complexity, random);
  const demands = demandsFor(cell.factor, random);
  const peaks = peakDemands(durations, successors, demands);
  const capacities = Array.from({ length: RESOURCES }, (_, resource) => {
    const least = Math.max(...demands.map((own) => own[resource] ?? 0));
    const most = Math.max(least, peaks[resource] ?? 0);
    return least + Math.round(cell.strength * (most - least));
  });
  const named = (amounts: readonly number[]): Record<string, number> =>
    Object.fromEntries(amounts.map((amount, resource) => [`R${resource}`, amount]));
  return {
    tasks: durations.map((duration, task) => ({
      ...{ id: `${task}`, duration },
      demands: named(demands[task] ?? []),
    })),
    precedences: successors.flatMap((own, before) =>
      [...own].map((after) => ({ before: `${before}`, after: `${after}`, minLag: 0 })),
    ),
    capacities: named(capacities),
  };
}

/** Arcs from lower to higher activities, none of them implied by others when it was drawn. */
function network(complexity: number, random: Random): Set<number>[] {
  const after = Array.from({ length: ACTIVITIES }, () => new Set<number>());
  const before = Array.from({ length: ACTIVITIES }, () => new Set<number>());
  const link = (from: number, to: number): void => {
    after[from]?.add(to);
    before[to]?.add(from);
  };
  const isOpen = (from: number, to: number): boolean =>
    (after[from]?.size ?? 0) < NEIGHBOURS_MAX && (before[to]?.size ?? 0) < NEIGHBOURS_MAX;
  for (let to = ENDS; to < ACTIVITIES; to += 1) {
    const candidates = range(0, Math.min(to, ACTIVITIES - ENDS)).filter((one) => isOpen(one, to));
    if (candidates.length > 0) link(random.pick(candidates), to);
  }
  for (let from = 0; from < ACTIVITIES - ENDS; from += 1) {
    if ((after[from]?.size ?? 0) > 0) continue;
    const candidates = range(Math.max(from + 1, ENDS), ACTIVITIES).filter((to) => isOpen(from, to));
    if (candidates.length > 0) link(from, random.pick(candidates));
  }
  // The published measure counts the arcs of the dummy start and end too.
  const wanted = Math.round(complexity * (ACTIVITIES + 2)) - 2 * ENDS;
  let arcs = after.reduce((sum, own) => sum + own.size, 0);
  for (let tries = 0; tries < 5000 && arcs < wanted; tries += 1) {
    const from = random.below(ACTIVITIES - ENDS);
    const to = Math.max(from + 1, ENDS) + random.below(ACTIVITIES - Math.max(from + 1, ENDS));
    if (!isOpen(from, to) || reaches(after, from, to)) continue;
    link(from, to);
    arcs += 1;
  }
  return after;
}

function reaches(after: readonly ReadonlySet<number>[], from: number, to: number): boolean {
  return [...(after[from] ?? [])].some(
    (next) => next === to || (next < to && reaches(after, next, to)),
  );
}

/** Demands of 1–10; `factor` is the share of activity and resource pairs that have one. */
function demandsFor(factor: number, random: Random): number[][] {
  const pairs = random.shuffle(range(0, ACTIVITIES * RESOURCES));
  const demands = Array.from({ length: ACTIVITIES }, () => new Array<number>(RESOURCES).fill(0));
  const give = (pair: number): void => {
    const own = demands[Math.floor(pair / RESOURCES)];
    if (own) own[pair % RESOURCES] = 1 + random.below(10);
  };
  for (let task = 0; task < ACTIVITIES; task += 1) give(task * RESOURCES + random.below(RESOURCES));
  const wanted = Math.round(factor * pairs.length);
  let given = ACTIVITIES;
  for (const pair of pairs) {
    if (given >= wanted) break;
    if ((demands[Math.floor(pair / RESOURCES)]?.[pair % RESOURCES] ?? 0) > 0) continue;
    give(pair);
    given += 1;
  }
  return demands;
}

/** The most of each resource that is asked for at once when all start as early as they can. */
function peakDemands(
  durations: readonly number[],
  successors: readonly ReadonlySet<number>[],
  demands: readonly (readonly number[])[],
): number[] {
  const starts = new Array<number>(ACTIVITIES).fill(0);
  successors.forEach((own, from) => {
    for (const to of own)
      starts[to] = Math.max(starts[to] ?? 0, (starts[from] ?? 0) + (durations[from] ?? 0));
  });
  const isRunning = (task: number, time: number): boolean =>
    (starts[task] ?? 0) <= time && time < (starts[task] ?? 0) + (durations[task] ?? 0);
  return range(0, RESOURCES).map((resource) =>
    Math.max(
      ...range(0, 10 * ACTIVITIES).map((time) =>
        demands.reduce(
          (sum, own, task) => sum + (isRunning(task, time) ? (own[resource] ?? 0) : 0),
          0,
        ),
      ),
    ),
  );
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}
