import { Arcs, startToStart, type Arc } from "./arcs.ts";
import { Cumulative } from "./cumulative.ts";
import { Engine } from "./engine.ts";
import { Trail } from "./trail.ts";
import { lagBetween, type Network } from "../network.ts";

/** The engine of a problem, and how its variables are laid out. */
export type Model = {
  readonly engine: Engine;
  /** Variables 0 … tasks − 1 are starts. */
  readonly tasks: number;
  /** Variable of the latest end. */
  readonly end: number;
  /** Variables after it say which of two tasks that can't run together goes first: 1 the lower. */
  readonly variables: number;
};

/** Builds the engine: starts within their windows, the end after every task, and an order for each exclusive pair. */
export function buildModel(network: Network, horizon: number, bound: number): Model {
  const { durations, tasks } = network;
  const end = tasks;
  const least = durations.map((_, task) => network.earliest(task));
  const greatest = durations.map((_, task) => horizon - network.tail(task));
  least.push(bound);
  greatest.push(horizon);
  const arcs: Arc[] = network.arcs.flatMap(({ from, to, lag }) => startToStart(from, to, lag));
  durations.forEach((duration, task) => arcs.push(...startToStart(task, end, duration)));
  for (const [one, other] of exclusivePairs(network)) {
    const [first, second] = [durations[one] ?? 0, durations[other] ?? 0];
    if (lagBetween(network, one, other) >= first || lagBetween(network, other, one) >= second)
      continue;
    const order = least.length;
    least.push(0);
    greatest.push(1);
    arcs.push(...startToStart(one, other, first, 2 * order, 1));
    arcs.push(...startToStart(other, one, second, 2 * order + 1, 0));
  }
  const trail = new Trail(least, greatest);
  const engine = new Engine(trail, new Arcs(arcs, 2 * least.length), cumulativesOf(network));
  return { engine, tasks, end, variables: least.length };
}

function cumulativesOf(network: Network): Cumulative[] {
  return network.resources.flatMap(({ capacity, demands }) => {
    const users = demands.flatMap((demand, task) => {
      const duration = network.durations[task] ?? 0;
      return demand > 0 && duration > 0 ? [{ task, duration, demand }] : [];
    });
    const total = users.reduce((sum, { demand }) => sum + demand, 0);
    return total > capacity ? [new Cumulative(users, capacity)] : [];
  });
}

/** Pairs whose demands together exceed a capacity. */
function exclusivePairs(network: Network): [number, number][] {
  const pairs: [number, number][] = [];
  for (let one = 0; one < network.tasks; one += 1) {
    for (let other = one + 1; other < network.tasks; other += 1) {
      if (network.durations[one] === 0 || network.durations[other] === 0) continue;
      const isExclusive = network.resources.some(
        ({ capacity, demands }) => (demands[one] ?? 0) + (demands[other] ?? 0) > capacity,
      );
      if (isExclusive) pairs.push([one, other]);
    }
  }
  return pairs;
}
