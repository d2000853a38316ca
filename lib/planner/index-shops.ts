import type { IndexedProblem } from "./indexed.ts";
import type { PlanProblem } from "./problem.ts";
import { POINTS } from "./weights.ts";

/** All shops a household tours in a week are few; combinations are listed, so this many at most. */
const SHOPS_MAX = 10;

/** Sets of shops as bits, and every tour with its points. Throws above `SHOPS_MAX` shops. */
export function indexShops(
  problem: PlanProblem,
): Pick<IndexedProblem, "shopSets" | "shopSetOfItem" | "shopPoints" | "tours"> {
  const { shops, items, weights } = problem;
  if (shops.length > SHOPS_MAX) throw new Error(`a plan problem holds at most ${SHOPS_MAX} shops`);
  const points = shops.map(({ effort }) => weights.shops * POINTS.shop * effort);
  const bits = new Map(shops.map(({ id }, shop) => [id, 1 << shop]));
  const sets = new Map([[0, 0]]);
  const shopSetOfItem = Int32Array.from(items, ({ shopIds }) => {
    const set = shopIds.reduce((all, id) => all | (bits.get(id) ?? 0), 0);
    const number = sets.get(set) ?? sets.size;
    sets.set(set, number);
    return number;
  });
  const tours = Array.from({ length: 1 << shops.length }, (_, tour) => ({
    shops: tour,
    points: points.reduce((sum, each, shop) => sum + ((tour >> shop) & 1 ? each : 0), 0),
  }));
  tours.sort((left, right) => right.points - left.points || left.shops - right.shops);
  return {
    shopSets: Int32Array.from(sets.keys()),
    shopSetOfItem,
    shopPoints: Float64Array.from(points),
    tours,
  };
}

/** Points of the easiest tour that reaches every needed set of shops. */
export function bestTour(
  tours: IndexedProblem["tours"],
  needed: readonly number[],
): IndexedProblem["tours"][number] {
  const found = tours.find(({ shops }) => needed.every((set) => set === 0 || (set & shops) !== 0));
  return found ?? { shops: 0, points: 0 };
}
