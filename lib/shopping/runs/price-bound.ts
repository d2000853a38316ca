import { priceItem, type PriceTable, tableOf } from "./price-item.ts";
import type { Tally, TripSet } from "./tally.ts";

/**
 * A part of the search: trips that are made, and trips that still may be. Prices split the cost of
 * each undecided trip among the needs it could serve; they stand as a `PriceTable` lists them.
 */
export type Region = {
  readonly made: TripSet;
  readonly allowed: TripSet;
  readonly prices: Float64Array;
};

/** What prices prove about a region. */
export type PriceBound = {
  /** No trip set of the region costs less. */
  readonly bound: number;
  readonly prices: Float64Array;
  /** By trip: its cost less the prices it collects. Above zero: it does not pay at these prices. */
  readonly reduced: Float64Array;
  /** By trip: the sum of need parts that the items' cheapest ways take from it. */
  readonly used: Float64Array;
};

const HALVE_AFTER = 8;

/** Bounds regions of one problem. */
export class PriceBounds {
  readonly #tally: Tally;
  readonly #table: PriceTable;

  constructor(tally: Tally) {
    this.#tally = tally;
    this.#table = tableOf(tally);
  }

  /** Prices of nothing, to start from. */
  zeroPrices(): Float64Array {
    return new Float64Array(this.#table.trip.length);
  }

  /**
   * Raises the lower bound of a region by subgradient steps on the Lagrangian dual of the rows "a trip
   * serves a need only if it is made" (Held, Wolfe & Crowder 1974, Math. Programming 6:62–88; the step
   * length of Polyak, aimed at `known`, the cost of the best plan so far). Any prices give a valid
   * bound, so the best seen counts. Stops when the bound reaches `goal` or after `rounds`.
   */
  raise(
    region: Region,
    limits: { readonly known: number; readonly goal: number; readonly rounds: number },
  ): PriceBound {
    const { known, goal, rounds } = limits;
    let scale = 1;
    let best = this.#priced(region, region.prices);
    let current = best;
    for (let round = 0, idle = 0; round < rounds && best.bound < goal; round += 1) {
      const prices = this.#stepped(region, current, scale * (known - current.bound));
      if (!prices) break;
      current = this.#priced(region, prices);
      idle = current.bound > best.bound + 1e-6 ? 0 : idle + 1;
      if (current.bound > best.bound) best = current;
      if (idle >= HALVE_AFTER) [scale, idle] = [scale / 2, 0];
    }
    return best;
  }

  /** The bound that given prices prove: every item's cheapest way, plus the trips that pay. */
  #priced(region: Region, prices: Float64Array): Priced {
    const { graphs, model, steps } = this.#tally;
    const table = this.#table;
    const priced: Priced = {
      prices,
      reduced: Float64Array.from(model.trips, (trip) => trip.cents),
      used: new Float64Array(model.trips.length),
      parts: new Float64Array(prices.length),
      bound: 0,
    };
    for (let row = 0; row < prices.length; row += 1) {
      const trip = table.trip[row] ?? 0;
      priced.reduced[trip] = (priced.reduced[trip] ?? 0) - (prices[row] ?? 0);
    }
    for (let item = 0; item < graphs.length; item += 1) {
      priced.bound += priceItem(table, item, region, priced);
    }
    steps.count += graphs.length;
    model.trips.forEach((trip, index) => {
      if (region.made[index]) priced.bound += trip.cents;
      else if (region.allowed[index]) priced.bound += Math.min(0, priced.reduced[index] ?? 0);
    });
    return priced;
  }

  /** Prices moved along the subgradient, or undefined when it is zero: then they are the best. */
  #stepped(
    { made, allowed }: Region,
    { prices, parts, reduced }: Priced,
    gap: number,
  ): Float64Array | undefined {
    const { trip: tripOf } = this.#table;
    const slopes = new Float64Array(prices.length);
    let length = 0;
    for (let row = 0; row < prices.length; row += 1) {
      const trip = tripOf[row] ?? 0;
      if (made[trip] || !allowed[trip]) continue;
      const slope = (parts[row] ?? 0) - ((reduced[trip] ?? 0) < 0 ? 1 : 0);
      // A zero price is not pushed below zero.
      if (slope <= 0 && (prices[row] ?? 0) <= 0) continue;
      slopes[row] = slope;
      length += slope * slope;
    }
    if (length === 0 || !(gap > 0)) return undefined;
    const step = gap / length;
    for (let row = 0; row < prices.length; row += 1)
      slopes[row] = Math.max(0, (prices[row] ?? 0) + step * (slopes[row] ?? 0));
    return slopes;
  }
}

type Priced = PriceBound & {
  /** By row of the table: the part of the need that the cheapest way takes from the trip. */
  readonly parts: Float64Array;
  bound: number;
};
