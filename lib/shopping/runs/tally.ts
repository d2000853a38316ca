import type { RunModel } from "./compile.ts";
import { cheapestPath, itemGraph, type ItemGraph, type ItemPath } from "./item-graph.ts";

/** Trips by number: made, or still allowed to be made. */
export type TripSet = readonly boolean[];

/**
 * The cost of making exactly the trips of a set. With trips given the rest separates by item, and an
 * item's cost depends only on the trips that can serve it, so each is worked out once.
 */
export type Tally = {
  readonly model: RunModel;
  readonly graphs: readonly ItemGraph[];
  /** Cents of trips, goods and waste; Infinity when some need stays open. */
  readonly costOf: (trips: TripSet) => number;
  readonly pathsOf: (trips: TripSet) => readonly ItemPath[];
  /** Counts every cheapest path worked out, here and by those who search with this tally. */
  readonly steps: { count: number };
};

/** Prepares a model for being costed many times. */
export function tallyOf(model: RunModel): Tally {
  const graphs = model.items.map(itemGraph);
  const known = graphs.map(() => new Map<number | string, number>());
  const steps = { count: 0 };
  const itemCents = (index: number, trips: TripSet): number => {
    const [graph, costs] = [graphs[index], known[index]];
    if (!graph || !costs) return 0;
    const key = keyOf(graph, trips);
    const before = costs.get(key);
    if (before !== undefined) return before;
    steps.count += 1;
    const { cents } = cheapestPath(graph, (trip) => trips[trip] ?? false);
    costs.set(key, cents - graph.model.usedCents);
    return cents - graph.model.usedCents;
  };
  return {
    model,
    graphs,
    steps,
    costOf: (trips) => {
      let sum = tripCents(model, trips);
      for (let index = 0; index < graphs.length && sum < Infinity; index += 1) {
        sum += itemCents(index, trips);
      }
      return sum;
    },
    pathsOf: (trips) => graphs.map((graph) => cheapestPath(graph, (trip) => trips[trip] ?? false)),
  };
}

/** Cents of the trips of a set. */
function tripCents({ trips }: RunModel, made: TripSet): number {
  return trips.reduce((sum, trip, index) => sum + (made[index] ? trip.cents : 0), 0);
}

/** Whole numbers up to here are exact. */
const EXACT_BITS = 53;

/** Which of an item's trips are made, as the bits of a number where they fit. */
function keyOf(graph: ItemGraph, trips: TripSet): number | string {
  if (graph.trips.length > EXACT_BITS)
    return graph.trips.map((trip) => (trips[trip] ? "1" : "0")).join("");
  let key = 0;
  for (const trip of graph.trips) key = 2 * key + (trips[trip] ? 1 : 0);
  return key;
}
