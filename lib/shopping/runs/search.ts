import { improveTrips, type Incumbent, SAME_CENTS } from "./improve.ts";
import { type PriceBound, PriceBounds, type Region } from "./price-bound.ts";
import type { Tally, TripSet } from "./tally.ts";

/** The best trip set found, and what is proven about it. */
export type SearchOutcome = Incumbent & {
  /** No trip set costs less. */
  readonly bound: number;
  readonly proven: boolean;
};

const ROOT_ROUNDS = 300;
const NODE_ROUNDS = 10;
/** Of the budget, what improving may take before the proof starts. */
const IMPROVE_SHARE = 0.5;
/** Trip sets that cost this much more than the best are still worth improving. */
const NEAR = 0.02;

type Node = Region & { readonly bound: number; readonly branchOn: number };

/**
 * Branch and bound over the trips: best bound first, each region bounded by prices, trips decided where
 * their reduced cost decides them. Exact when the budget of steps suffices; otherwise the outcome
 * states the bound it reached. `gap` is the share of the cost that need not be proven away.
 */
export function searchTrips(
  tally: Tally,
  budget: { readonly steps: number; readonly gap: number },
): SearchOutcome {
  const all = tally.model.trips.map(() => true);
  const free = tally.model.trips.map((trip) => trip.cents === 0);
  const start = improveTrips(tally, all, budget.steps * IMPROVE_SHARE);
  const search = new TripSearch(tally, budget, start);
  search.visit(
    { made: free, allowed: all, prices: search.bounds.zeroPrices() },
    -Infinity,
    ROOT_ROUNDS,
  );
  for (let node = search.next(); node; node = search.next()) {
    const { branchOn, made, allowed, prices, bound } = node;
    search.visit({ made: changed(made, branchOn, true), allowed, prices }, bound, NODE_ROUNDS);
    const without = changed(allowed, branchOn, false);
    search.visit({ made, allowed: without, prices }, bound, NODE_ROUNDS);
  }
  return search.outcome();
}

/** The state of one search: the best so far and the regions still open. */
class TripSearch {
  readonly bounds: PriceBounds;
  readonly #tally: Tally;
  readonly #budget: { readonly steps: number; readonly gap: number };
  readonly #open: Node[] = [];
  #best: Incumbent;
  /** The least bound of the regions that were closed without being beaten outright. */
  #closed = Infinity;

  constructor(
    tally: Tally,
    budget: { readonly steps: number; readonly gap: number },
    start: Incumbent,
  ) {
    this.bounds = new PriceBounds(tally);
    this.#tally = tally;
    this.#budget = budget;
    this.#best = start;
  }

  /** Bounds a region, looks for a better plan in it, and closes it or keeps it open. */
  visit(region: Region, parentBound: number, rounds: number): void {
    const limits = { known: this.#best.cost, goal: this.#goal(), rounds };
    const priced = this.bounds.raise(region, limits);
    const bound = Math.max(parentBound, priced.bound);
    if (bound >= this.#goal()) {
      this.#closed = Math.min(this.#closed, bound);
      return;
    }
    this.#lookFor(likelyTrips(region, priced));
    const rest = decided(region, priced, this.#best.cost);
    const branchOn = branchTrip(rest, priced);
    if (branchOn === undefined) {
      const exact = { trips: rest.made, cost: this.#tally.costOf(rest.made) };
      this.#offer(exact);
      this.#closed = Math.min(this.#closed, exact.cost);
    } else this.#open.push({ ...rest, bound, branchOn });
  }

  /** Takes the open region with the lowest bound; undefined when none is worth it or steps ran out. */
  next(): Node | undefined {
    if (this.#tally.steps.count >= this.#budget.steps) return undefined;
    const lowest = this.#lowest();
    if (!lowest || lowest.bound >= this.#goal()) return undefined;
    this.#open.splice(this.#open.indexOf(lowest), 1);
    return lowest;
  }

  outcome(): SearchOutcome {
    const open = this.#lowest()?.bound ?? Infinity;
    const bound = Math.min(open, this.#closed, this.#best.cost);
    const proven = bound >= this.#best.cost - SAME_CENTS;
    return { ...this.#best, bound: proven ? this.#best.cost : bound, proven };
  }

  #lowest(): Node | undefined {
    return this.#open.reduce<Node | undefined>(
      (least, node) => (least && least.bound <= node.bound ? least : node),
      undefined,
    );
  }

  #goal(): number {
    const { cost } = this.#best;
    return cost - Math.max(SAME_CENTS / 2, cost * this.#budget.gap);
  }

  /** Tries a trip set, and improves it when it comes near the best; improving any would take long. */
  #lookFor(trips: TripSet): void {
    const cost = this.#tally.costOf(trips);
    if (cost > this.#best.cost * (1 + NEAR)) return;
    this.#offer(improveTrips(this.#tally, trips, this.#budget.steps));
  }

  #offer(candidate: Incumbent): void {
    if (candidate.cost < this.#best.cost) this.#best = candidate;
  }
}

/** The trips the priced items would use. */
function likelyTrips(region: Region, priced: PriceBound): TripSet {
  return region.allowed.map(
    (isAllowed, trip) =>
      isAllowed && ((region.made[trip] ?? false) || (priced.used[trip] ?? 0) > 0),
  );
}

/** The region with every trip decided whose other choice could not beat the best plan known. */
function decided(region: Region, priced: PriceBound, known: number): Region {
  const slack = known - priced.bound;
  const isOpen = (trip: number): boolean =>
    (region.allowed[trip] ?? false) && !(region.made[trip] ?? false);
  return {
    prices: priced.prices,
    made: region.made.map(
      (made, trip) => made || (isOpen(trip) && -reducedOf(priced, trip) > slack),
    ),
    allowed: region.allowed.map(
      (allowed, trip) => allowed && !(isOpen(trip) && reducedOf(priced, trip) > slack),
    ),
  };
}

/** The undecided trip that the priced items use most; undefined when all are decided. */
function branchTrip({ made, allowed }: Region, priced: PriceBound): number | undefined {
  let best: number | undefined;
  allowed.forEach((isAllowed, trip) => {
    if (!isAllowed || made[trip]) return;
    const use = priced.used[trip] ?? 0;
    if (best === undefined || use > (priced.used[best] ?? 0)) best = trip;
  });
  return best;
}

function reducedOf(priced: PriceBound, trip: number): number {
  return priced.reduced[trip] ?? 0;
}

function changed(set: TripSet, trip: number, value: boolean): TripSet {
  return set.map((was, index) => (index === trip ? value : was));
}
