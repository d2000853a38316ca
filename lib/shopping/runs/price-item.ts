import type { FlatArcs } from "./item-graph.ts";
import type { Tally, TripSet } from "./tally.ts";

/** A row for each need and each trip that could serve it, item by item. */
export type PriceTable = {
  /** Trip of each row. */
  readonly trip: Int32Array;
  readonly items: readonly PricedItem[];
};

type PricedItem = {
  readonly arcs: FlatArcs;
  readonly states: number;
  /** Row of each share of each arc. */
  readonly shareRow: Int32Array;
  /** Cents of the cheapest way on, and the arc it takes; by state, written anew each time. */
  readonly cents: Float64Array;
  readonly best: Int32Array;
  readonly usedCents: number;
};

/** Lists the rows of a problem's items. */
export function tableOf({ graphs, model }: Tally): PriceTable {
  const trips: number[] = [];
  const items = graphs.map((graph): PricedItem => {
    const rows = new Map<number, number>();
    const rowOf = (need: number, trip: number): number => {
      const key = need * model.trips.length + trip;
      const row = rows.get(key) ?? trips.length;
      if (row === trips.length) trips.push(trip);
      rows.set(key, row);
      return row;
    };
    const shareRow = graph.arcs
      .flat()
      .flatMap(({ option, shares }) => shares.map(({ need }) => rowOf(need, option.trip)));
    const states = graph.states.length;
    return {
      arcs: graph.flat,
      states,
      shareRow: Int32Array.from(shareRow),
      cents: new Float64Array(states),
      best: new Int32Array(states),
      usedCents: graph.model.usedCents,
    };
  });
  return { trip: Int32Array.from(trips), items };
}

/**
 * Cents of an item's cheapest way at prices, where trips that are made ask none; adds what the way
 * takes from each trip to `used` and `parts`. Plain loops: it runs a million times.
 */
export function priceItem(
  table: PriceTable,
  item: number,
  { made, allowed }: { readonly made: TripSet; readonly allowed: TripSet },
  into: {
    readonly prices: Float64Array;
    readonly used: Float64Array;
    readonly parts: Float64Array;
  },
): number {
  const priced = table.items[item];
  if (!priced || priced.states === 0) return 0;
  const { arcs, cents, best, shareRow, states } = priced;
  cents[states - 1] = 0;
  best[states - 1] = -1;
  for (let state = states - 2; state >= 0; state -= 1) {
    let [least, chosen] = [Infinity, -1];
    for (let arc = arcs.first[state] ?? 0; arc < (arcs.first[state + 1] ?? 0); arc += 1) {
      const trip = arcs.trip[arc] ?? 0;
      if (!allowed[trip]) continue;
      let sum = (arcs.cents[arc] ?? 0) + (cents[arcs.to[arc] ?? 0] ?? 0);
      if (!made[trip]) {
        for (let at = arcs.firstShare[arc] ?? 0; at < (arcs.firstShare[arc + 1] ?? 0); at += 1)
          sum += (arcs.share[at] ?? 0) * (into.prices[shareRow[at] ?? 0] ?? 0);
      }
      if (sum < least) [least, chosen] = [sum, arc];
    }
    cents[state] = least;
    best[state] = chosen;
  }
  for (let arc = best[0] ?? -1; arc >= 0; arc = best[arcs.to[arc] ?? 0] ?? -1) {
    const trip = arcs.trip[arc] ?? 0;
    for (let at = arcs.firstShare[arc] ?? 0; at < (arcs.firstShare[arc + 1] ?? 0); at += 1) {
      const share = arcs.share[at] ?? 0;
      const row = shareRow[at] ?? 0;
      into.used[trip] = (into.used[trip] ?? 0) + share;
      into.parts[row] = (into.parts[row] ?? 0) + share;
    }
  }
  return (cents[0] ?? 0) - priced.usedCents;
}
