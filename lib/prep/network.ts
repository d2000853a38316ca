import type { Conflict, SchedulingProblem } from "./problem.ts";

/** "start(to) ≥ start(from) + lag". */
type NetworkArc = { readonly from: number; readonly to: number; readonly lag: number };

/** A problem by index, with the longest paths between starts. */
export type Network = {
  readonly ids: readonly string[];
  readonly tasks: number;
  readonly durations: readonly number[];
  readonly arcs: readonly NetworkArc[];
  readonly resources: readonly {
    readonly name: string;
    readonly capacity: number;
    readonly demands: readonly number[];
  }[];
  /** Longest path from start to start, row by row; `NO_PATH` where there is none. */
  readonly distance: Int32Array;
  readonly earliest: (task: number) => number;
  /** Least time from a task's start to the end of everything. */
  readonly tail: (task: number) => number;
  readonly criticalPath: number;
  /** Lags lead in a ring (maximal lags do). */
  readonly hasRings: boolean;
};

const NO_PATH = -1_000_000_000;

/** Least time from the start of one task to the start of another, by lags alone. */
export function lagBetween(network: Network, from: number, to: number): number {
  return network.distance[from * network.tasks + to] ?? NO_PATH;
}

/** Indexes a problem and its longest paths; a conflict where lags alone or one demand can't be met. */
export function buildNetwork(problem: SchedulingProblem): Network | Conflict {
  const ids = problem.tasks.map(({ id }) => id);
  const durations = problem.tasks.map(({ duration }) => duration);
  const tooMuch = findTooMuch(problem);
  if (tooMuch) return tooMuch;
  const arcs = indexArcs(problem, ids, durations);
  const paths = longestPaths(ids.length, arcs);
  if ("ring" in paths)
    return {
      kind: "lags",
      tasks: paths.ring.map((task) => ids[task] ?? ""),
      excess: paths.excess,
    };
  const { distance } = paths;
  const earliest = durations.map((_, task) => {
    let least = 0;
    for (let other = 0; other < ids.length; other += 1)
      least = Math.max(least, distance[other * ids.length + task] ?? 0);
    return least;
  });
  const tails = durations.map((duration, task) => {
    let least = duration;
    for (let other = 0; other < ids.length; other += 1) {
      const lag = distance[task * ids.length + other] ?? NO_PATH;
      if (lag > NO_PATH) least = Math.max(least, lag + (durations[other] ?? 0));
    }
    return least;
  });
  return {
    ids,
    tasks: ids.length,
    durations,
    arcs,
    resources: Object.entries(problem.capacities).map(([name, capacity]) => ({
      name,
      capacity,
      demands: problem.tasks.map(({ demands }) => demands[name] ?? 0),
    })),
    distance,
    earliest: (task) => earliest[task] ?? 0,
    tail: (task) => tails[task] ?? 0,
    criticalPath: Math.max(0, ...durations.map((duration, i) => (earliest[i] ?? 0) + duration)),
    hasRings: hasRings(ids.length, arcs),
  };
}

/** True when arcs lead from some task back to itself: then tasks can't be placed one after another. */
function hasRings(tasks: number, arcs: readonly NetworkArc[]): boolean {
  const between = arcs.filter(({ from, to }) => from !== to);
  const incoming = new Array<number>(tasks).fill(0);
  for (const { to } of between) incoming[to] = (incoming[to] ?? 0) + 1;
  const free = incoming.flatMap((count, task) => (count === 0 ? [task] : []));
  for (const task of free) {
    for (const { from, to } of between) {
      if (from !== task) continue;
      incoming[to] = (incoming[to] ?? 0) - 1;
      if (incoming[to] === 0) free.push(to);
    }
  }
  return free.length < tasks;
}

function findTooMuch({ tasks, capacities }: SchedulingProblem): Conflict | undefined {
  for (const { id, duration, demands } of tasks) {
    if (duration === 0) continue;
    for (const [resource, demand] of Object.entries(demands)) {
      const capacity = capacities[resource] ?? 0;
      if (demand > capacity) return { kind: "demand", task: id, resource, demand, capacity };
    }
  }
  return undefined;
}

function indexArcs(
  { precedences }: SchedulingProblem,
  ids: readonly string[],
  durations: readonly number[],
): NetworkArc[] {
  const indexOf = new Map(ids.map((id, index) => [id, index]));
  return precedences.flatMap(({ before, after, minLag, maxLag, from: origin }) => {
    const [from, to] = [indexOf.get(before) ?? -1, indexOf.get(after) ?? -1];
    const shift = origin === "start" ? 0 : (durations[from] ?? 0);
    const arcs = [{ from, to, lag: minLag + shift }];
    if (maxLag !== undefined) arcs.push({ from: to, to: from, lag: -(maxLag + shift) });
    return arcs;
  });
}

/** Longest paths between all pairs (Floyd 1962, Warshall 1962), or a ring of positive length. */
function longestPaths(
  tasks: number,
  arcs: readonly NetworkArc[],
): { distance: Int32Array } | { ring: number[]; excess: number } {
  const distance = new Int32Array(tasks * tasks).fill(NO_PATH);
  const next = new Int32Array(tasks * tasks).fill(-1);
  for (let task = 0; task < tasks; task += 1) distance[task * tasks + task] = 0;
  for (const { from, to, lag } of arcs) {
    if (from === to && lag > 0) return { ring: [from], excess: lag };
    if (from === to || lag <= (distance[from * tasks + to] ?? 0)) continue;
    distance[from * tasks + to] = lag;
    next[from * tasks + to] = to;
  }
  for (let via = 0; via < tasks; via += 1) {
    for (let from = 0; from < tasks; from += 1) {
      const first = distance[from * tasks + via] ?? NO_PATH;
      if (first === NO_PATH || from === via) continue;
      for (let to = 0; to < tasks; to += 1) {
        const second = distance[via * tasks + to] ?? NO_PATH;
        if (second === NO_PATH || to === via) continue;
        if (first + second <= (distance[from * tasks + to] ?? NO_PATH)) continue;
        distance[from * tasks + to] = first + second;
        next[from * tasks + to] = next[from * tasks + via] ?? -1;
        if (from === to) return { ring: ringThrough(from, next, tasks), excess: first + second };
      }
    }
  }
  return { distance };
}

function ringThrough(start: number, next: Int32Array, tasks: number): number[] {
  const ring = [start];
  let task = next[start * tasks + start] ?? start;
  while (task !== start && ring.length <= tasks) {
    ring.push(task);
    task = next[task * tasks + start] ?? start;
  }
  return ring;
}
