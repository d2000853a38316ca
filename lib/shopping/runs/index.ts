/** Runs: which shop on which day, for least money, trips and waste. */
export { planRuns, planRunsWithSolver, RUN_BUDGET, type RunBudget } from "./plan-runs.ts";
export { type Mip, type MipAnswer, type SolveMip } from "./mip.ts";
export {
  NO_OVERRIDES,
  type FixedLine,
  type FixedReason,
  type Offer,
  type Overrides,
  type PossibleTrip,
  type Run,
  type RunItem,
  type RunLine,
  type RunPlan,
  type RunProblem,
  type StockUse,
  type Trip,
  type Unmet,
} from "./problem.ts";
export { lineId as lineIdOf } from "./fixed-lines.ts";
export { boughtLines, problemFrom } from "./go-on.ts";
export {
  onHandOf,
  PERISHABLE_DAYS_MAX,
  runItemsOf,
  type FoodOnSale,
  type OnHand,
} from "./items.ts";
export { replanRuns } from "./replan.ts";
export { possibleTrips, type Hours, type ShopToVisit } from "./trips.ts";
export { isStanding, standingOf, StandingPlan } from "./standing.ts";
