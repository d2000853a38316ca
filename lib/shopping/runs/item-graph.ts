import type { ItemModel, Option } from "./compile.ts";

/** Buying once more: from one amount covered to the next. */
type Arc = {
  readonly to: number;
  readonly option: Option;
  /** The part of each need (0–1) that this purchase serves. */
  readonly shares: readonly { readonly need: number; readonly share: number }[];
};

/**
 * All ways to buy one item, whatever trips are made. A state is how much of the need, in day order,
 * is covered; packs are used up one after another, each as far as its own life and its opened life
 * reach. What no longer counts is wasted.
 */
export type ItemGraph = {
  readonly model: ItemModel;
  /** Units covered, increasing; the last is the whole need. */
  readonly states: readonly number[];
  readonly arcs: readonly (readonly Arc[])[];
  /** Trips that any arc uses, increasing. */
  readonly trips: readonly number[];
  readonly flat: FlatArcs;
};

/** The arcs of a graph side by side, for loops that run millions of times. */
export type FlatArcs = {
  /** Arcs from state s are `first[s] … first[s + 1] − 1`. */
  readonly first: Int32Array;
  readonly to: Int32Array;
  readonly trip: Int32Array;
  readonly cents: Float64Array;
  /** Shares of arc a are `firstShare[a] … firstShare[a + 1] − 1`. */
  readonly firstShare: Int32Array;
  readonly shareNeed: Int32Array;
  readonly share: Float64Array;
};

/** A cheapest way through a graph: cents (Infinity when some need stays open) and its purchases. */
export type ItemPath = { readonly cents: number; readonly arcs: readonly PathArc[] };
export type PathArc = Arc & { readonly from: number };

/** Builds the graph of an item by walking from nothing covered; visits each reachable state once. */
export function itemGraph(model: ItemModel): ItemGraph {
  const found = new Map<number, Step[]>();
  const open = model.ends.length > 0 ? [0] : [];
  const total = model.ends.at(-1) ?? 0;
  while (open.length > 0) {
    const state = open.pop() as number;
    if (found.has(state) || state === total) continue;
    const steps = model.options.flatMap((option) => {
      const covered = coveredAfter(model, option, state);
      return covered > state ? [{ covered, option }] : [];
    });
    found.set(state, steps);
    open.push(...steps.map((step) => step.covered));
  }
  const states = [...found.keys(), total].sort((left, right) => left - right);
  const indexOf = new Map(states.map((state, index) => [state, index]));
  const arcs = states.map((state) =>
    undominated(found.get(state) ?? []).map(({ covered, option }) => ({
      to: indexOf.get(covered) ?? 0,
      option,
      shares: sharesOf(model, state, covered),
    })),
  );
  const trips = [...new Set(arcs.flat().map((arc) => arc.option.trip))];
  trips.sort((left, right) => left - right);
  return { model, states, arcs, trips, flat: flatArcs(arcs) };
}

type Step = { readonly covered: number; readonly option: Option };

/**
 * Steps from one state without those that another on the same trip makes needless: it reaches as far
 * for no more. From a later state everything costs at most the same, so no cheapest way is lost.
 */
function undominated(steps: readonly Step[]): Step[] {
  return steps.filter((step, index) =>
    steps.every((other, place) => {
      if (other.option.trip !== step.option.trip || place === index) return true;
      if (other.covered < step.covered || other.option.cents > step.option.cents) return true;
      const isSame = other.covered === step.covered && other.option.cents === step.option.cents;
      return isSame && place > index;
    }),
  );
}

function flatArcs(arcs: readonly (readonly Arc[])[]): FlatArcs {
  const all = arcs.flat();
  const shares = all.flatMap((arc) => arc.shares);
  return {
    first: endsOf(arcs.map((own) => own.length)),
    to: Int32Array.from(all, (arc) => arc.to),
    trip: Int32Array.from(all, (arc) => arc.option.trip),
    cents: Float64Array.from(all, (arc) => arc.option.cents),
    firstShare: endsOf(all.map((arc) => arc.shares.length)),
    shareNeed: Int32Array.from(shares, ({ need }) => need),
    share: Float64Array.from(shares, ({ share }) => share),
  };
}

/** Zero, then where each stretch of a length ends. */
function endsOf(lengths: readonly number[]): Int32Array {
  const ends = new Int32Array(lengths.length + 1);
  lengths.forEach((length, index) => (ends[index + 1] = (ends[index] ?? 0) + length));
  return ends;
}

/**
 * The cheapest way through a graph that uses only trips for which `isOpen` holds. Among equals the
 * first found stays, so the answer never varies.
 */
export function cheapestPath(graph: ItemGraph, isOpen: (trip: number) => boolean): ItemPath {
  const last = graph.states.length - 1;
  const cents = new Array<number>(last + 1).fill(Infinity);
  const best = new Array<Arc | undefined>(last + 1).fill(undefined);
  cents[last] = 0;
  for (let state = last - 1; state >= 0; state -= 1) {
    for (const arc of graph.arcs[state] ?? []) {
      if (!isOpen(arc.option.trip)) continue;
      const sum = arc.option.cents + (cents[arc.to] ?? Infinity);
      if (sum >= (cents[state] ?? Infinity)) continue;
      cents[state] = sum;
      best[state] = arc;
    }
  }
  const arcs: PathArc[] = [];
  for (let state = 0, arc = best[0]; arc; state = arc.to, arc = best[state]) {
    arcs.push({ ...arc, from: state });
  }
  return { cents: cents[0] ?? 0, arcs };
}

/** Units covered once a purchase has been used as far as it goes; `state` when it can't be used. */
function coveredAfter({ days, ends, item }: ItemModel, option: Option, state: number): number {
  const need = ends.findIndex((end) => state < end);
  if (need < option.firstNeed || need > option.lastNeed) return state;
  const openedUntil = (days[need] ?? 0) + (item.lives.openedDays ?? Infinity);
  let last = need;
  while (last < option.lastNeed && (days[last + 1] ?? Infinity) <= openedUntil) last += 1;
  return Math.min(state + option.size, ends[last] ?? state);
}

function sharesOf({ ends }: ItemModel, from: number, to: number): Arc["shares"] {
  return ends.flatMap((end, need) => {
    const start = ends[need - 1] ?? 0;
    const served = Math.min(to, end) - Math.max(from, start);
    return served > 0 ? [{ need, share: served / (end - start) }] : [];
  });
}
