import { bestTour, indexShops } from "./index-shops.ts";
import type { PlannedWeek, PlanProblem } from "./problem.ts";

/** The shops of the easiest tour that has everything of a planned week, in the order of the problem. */
export function weekShops(problem: PlanProblem, week: PlannedWeek): string[] {
  const { shopSets, shopSetOfItem, tours } = indexShops(problem);
  const planned = new Set(week.lunches.flatMap(({ itemIds }) => itemIds));
  const needed = problem.items.flatMap(({ id }, item) =>
    planned.has(id) ? (shopSets[shopSetOfItem[item] ?? 0] ?? 0) : [],
  );
  const { shops } = bestTour(tours, needed);
  return problem.shops.filter((_, shop) => ((shops >> shop) & 1) === 1).map(({ id }) => id);
}
