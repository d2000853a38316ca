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
  useFirst,
  useFromLot,
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
export * from "./runs/index.ts";
