/** Safety: what speaks against a food for these children on this day. It warns, it never promises. */
export { Severity, type Avoidance, type ChildProfile } from "./child.ts";
export { ruleHolds, ruleNames, SchoolRule, UNLIMITED_RULE } from "./school-rule.ts";
export { RULE_STARTS, type RuleStart } from "./rule-starts.ts";
export { givesAway, holdsPhrase } from "./names.ts";
export { hardFilter, isAllowed } from "./is-allowed.ts";
export { isFor, type BoxChild, type BoxItem, type BoxLunch, type LabelRecord } from "./box.ts";
export { barsFor, type Bar, type BarGround } from "./bars.ts";
export { checkLunch, type CheckGround } from "./check-lunch.ts";
export { traitWord } from "./check-school.ts";
export {
  FINDING_KINDS,
  FINDING_LEVELS,
  findingWord,
  judgeFindings,
  type Finding,
  type FindingKind,
  type FindingLevel,
  type JudgedFinding,
} from "./finding.ts";
export { describeMark, SOURCES, type Source, type SourceId } from "./source.ts";
export { allergenWord, EU_FOURTEEN, listsNaming, US_NINE } from "./allergens/law-lists.ts";
export { findStandIns } from "./allergens/find-stand-ins.ts";
export { guidanceFor, SHAPE_GUIDANCE, type ShapeGuidance } from "./choking/guidance.ts";
export {
  bagAfter,
  bagConductance,
  BAG_KINDS,
  Carrying,
  celsius,
  CONSUMER_HOT_DAY,
  CONSUMER_SCHEME,
  describeReadingProblem,
  heatGivenOff,
  HOT_FILL_MIN_C,
  hoursUntil,
  ICE_KJ,
  isTimeSensitive,
  JAR_KJ_PER_K,
  jarConductance,
  JAR_MINIMA,
  LATENT_KJ,
  outMinutesMax,
  perHourOf,
  predictCold,
  predictHot,
  ReadingTaken,
  RETAIL_SCHEME,
  RETAIL_SIX_HOURS,
  specificHeatOf,
  standardPerHour,
  temperatureAfter,
  USUAL_CARRYING,
  WATER_KJ,
  type Bag,
  type BagKind,
  type HeatScheme,
  type Journey,
  type Prediction,
} from "./heat/index.ts";
export {
  amountWord,
  BALANCE_SCHEMES,
  balanceOfWeek,
  COMPONENTS,
  countAtSchool,
  countWeekAtSchool,
  creditAtSchool,
  creditingKindOf,
  onPlate,
  PLATE_GROUPS,
  portionsIn,
  SCHOOL_PATTERNS,
  schemeWord,
  VEGETABLE_SUBGROUPS,
  type BalanceRow,
  type BalanceScheme,
  type Component,
  type Credited,
  type CreditingKind,
  type PlateGroup,
  type SchoolGrade,
  type SchoolLunch,
  type VegetableSubgroup,
  type WeekBalance,
} from "./balance/index.ts";
export { checkWeek, type WeekFindings } from "./check-week.ts";
