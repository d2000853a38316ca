import type { Tally, TripSet } from "./tally.ts";

/** A trip set with its cost in cents. */
export type Incumbent = { readonly trips: TripSet; readonly cost: number };

/** Changes by less than this are no improvement: a thousandth of a cent. */
export const SAME_CENTS = 1e-3;

/**
 * Improves a trip set by dropping or adding a trip or, where that no longer helps, by swapping one for
 * another, the best change first, until none helps or the budget of steps is spent. Trips that cost
 * nothing stay in.
 */
export function improveTrips(tally: Tally, start: TripSet, stepsMax: number): Incumbent {
  let best: Incumbent = { trips: start, cost: tally.costOf(start) };
  while (tally.steps.count < stepsMax) {
    const next =
      cheapestOf(tally, best, toggles(tally, best.trips)) ??
      cheapestOf(tally, best, swaps(tally, best.trips));
    if (!next) break;
    best = next;
  }
  return best;
}

function cheapestOf(
  tally: Tally,
  than: Incumbent,
  candidates: Iterable<TripSet>,
): Incumbent | undefined {
  let best: Incumbent | undefined;
  for (const trips of candidates) {
    const cost = tally.costOf(trips);
    if (cost < (best ?? than).cost - SAME_CENTS) best = { trips, cost };
  }
  return best;
}

function* toggles(tally: Tally, trips: TripSet): Generator<TripSet> {
  for (const trip of paidTrips(tally)) yield toggled(trips, [trip]);
}

function* swaps(tally: Tally, trips: TripSet): Generator<TripSet> {
  const paid = paidTrips(tally);
  for (const out of paid.filter((trip) => trips[trip])) {
    for (const into of paid.filter((trip) => !trips[trip])) yield toggled(trips, [out, into]);
  }
}

function paidTrips({ model }: Tally): number[] {
  return model.trips.flatMap((trip, index) => (trip.cents > 0 ? [index] : []));
}

function toggled(trips: TripSet, which: readonly number[]): TripSet {
  return trips.map((made, index) => (which.includes(index) ? !made : made));
}
