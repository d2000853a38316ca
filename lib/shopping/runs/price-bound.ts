import { cheapestPath, type ItemPath } from "./item-graph.ts";
import type { Tally, TripSet } from "./tally.ts";

/**
 * A part of the search: trips that are made, and trips that still may be. Prices split the cost of
 * each undecided trip among the needs it could serve: one array per item, by trip and need.
 */
export type Region = {
  readonly made: TripSet;
  readonly allowed: TripSet;
  readonly prices: readonly Float64Array[];
};

/** What prices prove about a region. */
export type PriceBound = {
  /** No trip set of the region costs less. */
  readonly bound: number;
  readonly prices: readonly Float64Array[];
  /** By trip: its cost less the prices it collects. Above zero: it does not pay at these prices. */
  readonly reduced: readonly number[];
  /** By trip: the sum of need parts that the items' cheapest ways take from it. */
  readonly used: readonly number[];
};

const HALVE_AFTER = 8;

/** Prices of nothing, to start from. */
export function zeroPrices({ graphs, model }: Tally): Float64Array[] {
  return graphs.map((graph) => new Float64Array(graph.model.days.length * model.trips.length));
}

/**
 * Raises the lower bound of a region by subgradient steps on the Lagrangian dual of the rows "a trip
 * serves a need only if it is made" (Held, Wolfe & Crowder 1974, Math. Programming 6:62–88; the step
 * length of Polyak, aimed at `known`, the cost of the best plan so far). Any prices give a valid
 * bound, so the best seen counts. Stops when the bound reaches `goal` or after `rounds`.
 */
export function raiseBound(
  tally: Tally,
  region: Region,
  limits: { readonly known: number; readonly goal: number; readonly rounds: number },
): PriceBound {
  const { known, goal, rounds } = limits;
  let prices = region.prices;
  let scale = 1;
  let best = priced(tally, region, prices);
  let current = best;
  for (let round = 0, idle = 0; round < rounds && best.bound < goal; round += 1) {
    const next = steppedPrices(tally, region, current, prices, scale * (known - current.bound));
    if (!next) break;
    prices = next;
    current = priced(tally, region, prices);
    idle = current.bound > best.bound + 1e-6 ? 0 : idle + 1;
    if (current.bound > best.bound) best = current;
    if (idle >= HALVE_AFTER) [scale, idle] = [scale / 2, 0];
  }
  return best;
}

type Priced = PriceBound & { readonly paths: readonly ItemPath[] };

/** The bound that given prices prove: every item's cheapest way, plus the trips that pay. */
function priced(tally: Tally, region: Region, prices: readonly Float64Array[]): Priced {
  const { graphs, model } = tally;
  const count = model.trips.length;
  const used = new Array<number>(count).fill(0);
  const reduced = model.trips.map((trip) => trip.cents);
  let bound = 0;
  const paths = graphs.map((graph, index) => {
    const own = prices[index] ?? new Float64Array(0);
    own.forEach((price, at) => (reduced[at % count] = (reduced[at % count] ?? 0) - price));
    const path = cheapestPath(
      graph,
      (trip) => region.allowed[trip] ?? false,
      ({ option, shares }) =>
        region.made[option.trip] ? 0 : chargeOf(own, count, option.trip, shares),
    );
    bound += path.cents - graph.model.usedCents;
    for (const { option, shares } of path.arcs) {
      const parts = shares.reduce((sum, { share }) => sum + share, 0);
      used[option.trip] = (used[option.trip] ?? 0) + parts;
    }
    return path;
  });
  tally.steps.count += graphs.length;
  model.trips.forEach((trip, index) => {
    if (region.made[index]) bound += trip.cents;
    else if (region.allowed[index]) bound += Math.min(0, reduced[index] ?? 0);
  });
  return { bound, prices, reduced, used, paths };
}

/** What a purchase pays towards its trip; a plain loop, since it runs for every arc of every round. */
function chargeOf(
  prices: Float64Array,
  trips: number,
  trip: number,
  shares: readonly { readonly need: number; readonly share: number }[],
): number {
  let sum = 0;
  for (const { need, share } of shares) sum += share * (prices[need * trips + trip] ?? 0);
  return sum;
}

/** Prices moved along the subgradient, or undefined when it is zero: then they are the best. */
function steppedPrices(
  { graphs, model }: Tally,
  { made, allowed }: Region,
  { paths, reduced }: Priced,
  prices: readonly Float64Array[],
  gap: number,
): Float64Array[] | undefined {
  const count = model.trips.length;
  const slopes = graphs.map((graph, index) => {
    const slope = new Float64Array(prices[index]?.length ?? 0);
    for (const { option, shares } of paths[index]?.arcs ?? []) {
      for (const { need, share } of shares) slope[need * count + option.trip] = share;
    }
    for (const { trip, firstNeed, lastNeed } of graph.model.options) {
      const isPaying = (reduced[trip] ?? 0) < 0 && allowed[trip] && !made[trip];
      for (let need = firstNeed; need <= lastNeed; need += 1) {
        const at = need * count + trip;
        if (made[trip] || !allowed[trip]) slope[at] = 0;
        else if (isPaying) slope[at] = (slope[at] ?? 0) - 1;
      }
    }
    return slope;
  });
  const length = slopes.reduce((sum, slope, index) => sum + squared(slope, prices[index]), 0);
  if (length === 0 || !(gap > 0)) return undefined;
  const step = gap / length;
  return slopes.map((slope, index) =>
    slope.map((part, at) => Math.max(0, (prices[index]?.[at] ?? 0) + step * part)),
  );
}

/** Squared length of a slope, without the parts that would push a zero price below zero. */
function squared(slope: Float64Array, prices: Float64Array | undefined): number {
  let sum = 0;
  slope.forEach((part, at) => {
    if (part > 0 || (prices?.[at] ?? 0) > 0) sum += part * part;
  });
  return sum;
}
