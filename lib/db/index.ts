/** Storage: rows in, domain values out; the only place that knows Prisma. */
export { type PassphraseHash, readPassphraseHash, writePassphraseHash } from "./access.ts";
export { clearSeries, insertRows } from "./bulk.ts";
export { readLabels, readRecalls, readWaivers, type Recalls } from "./checks.ts";
export { type Database, type Db, inTransaction, openDatabase } from "./client.ts";
export {
  BOARD_KIND,
  publishDraft,
  readBoardDrafts,
  readDrafts,
  readOpeners,
  readTemplates,
  writeDraft,
  writeTemplate,
  type DraftRecord,
  type TemplateRecord,
} from "./drafts.ts";
export { readBoardLunches } from "./board-lunches.ts";
export { readHouseRecipes } from "./house-recipes.ts";
export { readDraftGround, readGoods, type DraftGoods, type DraftGround } from "./draft-records.ts";
export { FoodFollowers, handBackFood, handOverFood } from "./food-merge.ts";
export {
  foodColumns,
  foodOfRow,
  readFoods,
  readFoodsById,
  readOfferedFoods,
  readTricks,
} from "./foods.ts";
export {
  hasHappenedSince,
  restoreSnapshot,
  SlateSnapshot,
  takeSnapshot,
} from "./slate-snapshot.ts";
export {
  readChildren,
  readDaysOff,
  readSchoolRules,
  readShops,
  schoolRuleColumns,
  type AvoidanceRecord,
  type ChildRecord,
  type SchoolRuleRecord,
  type ShopRecord,
} from "./household.ts";
export {
  replaceDaysOff,
  writeChild,
  writeSchoolRule,
  writeShop,
  writeShopOrder,
} from "./write-household.ts";
export { keepUntilWritten } from "./kept.ts";
export {
  readFoodStates,
  readLots,
  readOwedFoods,
  readProductGlances,
  readSeen,
  type FoodState,
  type ProductGlance,
  type Seen,
  type SeenLevel,
} from "./larder.ts";
export { parseColumn } from "./json.ts";
export { applyMigrations, MigrationRefused, type MigrationOutcome } from "./migrate.ts";
export {
  readRecordedMinutes,
  readStepTicks,
  tickStep,
  untickStep,
  type StepTick,
} from "./kitchen-records.ts";
export { readSettings, Settings, writeSettings } from "./settings.ts";
export {
  Fate,
  readEpisode,
  readEpisodes,
  readEpisodesOfLunches,
  readNeighbours,
  readShown,
  type EpisodeRecord,
  type ItemRecord,
  type LunchRecord,
  type ThemeRecord,
} from "./weeks.ts";
export { entryStatements, groundOf, groundStatement, type Entry } from "./reactions.ts";
export { atOnce, type AtOnce, type Cell, type Statement } from "./at-once.ts";
export {
  applyFactsEntry,
  isFactsEntryKnown,
  readFactsGround,
  type FactsGround,
} from "./day-facts.ts";
export { readVerdicts, type VerdictRecord } from "./verdicts.ts";
export {
  readGroupPlaces,
  readHomeMade,
  readOnSale,
  type GroupPlace,
  type OnSale,
} from "./on-sale.ts";
export { lotColumns, readLotRecords, type LotRecord } from "./stock.ts";
export {
  ErrandDecisions,
  readErrandRuns,
  readErrandWeek,
  runRow,
  writeErrandWeek,
  type ErrandLineRecord,
  type ErrandRunRecord,
  type ErrandWeekRecord,
} from "./errands.ts";
export { readOwedItems, type OwedItem } from "./owed.ts";
export {
  copyDatabase,
  countTables,
  readWhole,
  replaceWhole,
  WholeSeries,
  type WholeProblem,
} from "./whole.ts";
