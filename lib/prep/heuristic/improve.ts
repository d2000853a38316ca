import { randomFrom, type Random } from "#lib/base/index.ts";
import type { Network } from "../network.ts";
import { numberAt } from "../solver/int-list.ts";
import { Generator } from "./generate.ts";

const POPULATION = 24;
/** Schedules generated in all; each costs a step. */
const SCHEDULES_MAX = 1200;
/** The share of a child's priorities that come from its better parent. */
const FROM_BETTER = 0.7;

/** A schedule found, and how many schedules were generated for it. */
export type Found = { readonly starts: Int32Array; readonly end: number; readonly steps: number };

type Member = {
  readonly priority: Float64Array;
  readonly starts: Int32Array;
  readonly end: number;
};

/**
 * A good schedule by a random-key genetic algorithm in which every child is justified twice, to the
 * right and to the left (Valls, Ballestín, Quintanilla 2005, EJOR 165:375–386; keys after Gonçalves
 * et al. 2008, EJOR 189:1171–1190). Stops at the bound. Always the same for one problem.
 */
export function findGoodSchedule(
  network: Network,
  horizon: number,
  bound: number,
  steps: number,
): Found {
  const random = randomFrom("prep");
  const breeder = new Breeder(new Generator(network, horizon), network);
  const members: Member[] = [];
  const limit = Math.min(steps, SCHEDULES_MAX);
  let best = breeder.grow(firstPriority(network));
  while (breeder.steps < limit && best.end > bound) {
    const child = breeder.grow(nextPriority(members, network, random));
    if (child.end < best.end) best = child;
    insert(members, child);
  }
  return { starts: best.starts, end: best.end, steps: breeder.steps };
}

class Breeder {
  steps = 0;
  private readonly generator: Generator;
  private readonly network: Network;

  constructor(generator: Generator, network: Network) {
    this.generator = generator;
    this.network = network;
  }

  /** A schedule from priorities, justified right and left. */
  grow(priority: Float64Array): Member {
    const { tasks } = this.generator;
    let starts = new Int32Array(tasks);
    let end = this.generator.generate(priority, false, starts);
    const right = new Int32Array(tasks);
    const byEnd = Float64Array.from(
      starts,
      (start, task) => start + (this.network.durations[task] ?? 0),
    );
    const length = this.generator.generate(byEnd, true, right);
    const fromRight = Float64Array.from(
      right,
      (start, task) => start + (this.network.durations[task] ?? 0) - length,
    );
    const left = new Int32Array(tasks);
    const leftEnd = this.generator.generate(fromRight, false, left);
    this.steps += 3;
    if (leftEnd <= end) [starts, end] = [left, leftEnd];
    return { starts, end, priority: keysOf(starts) };
  }
}

/** Priorities between 0 and 1, the earliest start highest. */
function keysOf(starts: Int32Array): Float64Array {
  const order = [...starts.keys()].sort((a, b) => numberAt(starts, a) - numberAt(starts, b));
  const keys = new Float64Array(starts.length);
  order.forEach((task, rank) => (keys[task] = 1 - rank / starts.length));
  return keys;
}

/** The longest way to the end first. */
function firstPriority(network: Network): Float64Array {
  return Float64Array.from(network.durations, (_, task) => network.tail(task));
}

function nextPriority(members: readonly Member[], network: Network, random: Random): Float64Array {
  const longest = Math.max(1, network.criticalPath);
  if (members.length < POPULATION)
    return Float64Array.from(
      network.durations,
      (_, task) => network.tail(task) / longest + random.next(),
    );
  // The better half breeds with anyone; sometimes a fresh one comes in.
  const better = members[random.below(POPULATION / 2)];
  const other = members[random.below(POPULATION)];
  return Float64Array.from(network.durations, (_, task) => {
    const fresh = random.next();
    if (fresh < 0.02) return random.next();
    const parent = random.next() < FROM_BETTER ? better : other;
    return parent?.priority[task] ?? fresh;
  });
}

/** Keeps the population sorted, without twins, at its size. */
function insert(members: Member[], child: Member): void {
  const isTwin = members.some(
    ({ end, starts }) =>
      end === child.end && starts.every((start, task) => start === child.starts[task]),
  );
  if (isTwin) return;
  const place = members.findIndex(({ end }) => end >= child.end);
  members.splice(place < 0 ? members.length : place, 0, child);
  if (members.length > POPULATION) members.pop();
}
