/** Shopping: what lunches take, packs rounded up, stock and its lives, and which shop on which day. */
export {
  needOf,
  needsOf,
  type Eater,
  type FoodToBuy,
  type Need,
  type NeedProblem,
  type PlannedItem,
} from "./need.ts";
export { leftOver, packGramsOf, packsFor, unitsPer100Servings, type PackSize } from "./pack.ts";
export {
  lastDayOf,
  livesOf,
  PLACES,
  usualPlace,
  type Lives,
  type Lot,
  type Place,
} from "./shelf.ts";
export {
  freezeLot,
  openLot,
  inOrderOfUse,
  takeFromLot,
  type StockProblem,
  type UseFirst,
} from "./stock.ts";
export {
  allocate,
  supplyOfLot,
  type Allocation,
  type DayNeed,
  type Supply,
  type SupplyUse,
} from "./allocate.ts";
export { gramsToPar, parGrams, type ParRule } from "./par.ts";
export { mergeTicks, nextStamp, tickLine, type LineState, type Tick, type Ticks } from "./ticks.ts";
export {
  settleOwed,
  SETTLINGS,
  stillOwed,
  type OpenOwed,
  type OwedFood,
  type Settling,
  type SettleProblem,
} from "./owed.ts";
export { arithmeticOf, type Arithmetic } from "./arithmetic.ts";
export { leftoversOf, weekCosts, type Leftover, type WeekCost } from "./cost.ts";
export {
  describeArithmetic,
  describeGrams,
  describeNeedProblem,
  describePacks,
} from "./describe-arithmetic.ts";
export {
  describeProof,
  describeRun,
  describeRunLine,
  describeUnmet,
  describeWeekCost,
  type Money,
} from "./describe-runs.ts";
export {
  describeLeftovers,
  describeOwed,
  describeSettleProblem,
  describeStockProblem,
  describeUseFirst,
  LIFE_CAUTION,
} from "./describe-stock.ts";
export {
  boughtLines,
  isStanding,
  lineIdOf,
  NO_OVERRIDES,
  onHandOf,
  PERISHABLE_DAYS_MAX,
  planRuns,
  planRunsWithSolver,
  possibleTrips,
  problemFrom,
  replanRuns,
  RUN_BUDGET,
  runItemsOf,
  standingOf,
  StandingPlan,
  type FixedLine,
  type FixedReason,
  type FoodOnSale,
  type Hours,
  type Mip,
  type MipAnswer,
  type Offer,
  type OnHand,
  type Overrides,
  type PossibleTrip,
  type Run,
  type RunBudget,
  type RunItem,
  type RunLine,
  type RunPlan,
  type RunProblem,
  type ShopToVisit,
  type SolveMip,
  type StockUse,
  type Trip,
  type Unmet,
} from "./runs/index.ts";
