/** Balance: what a lunch and a week count for, each number under one named scheme; guidance, never a grade. */
export { amountWord } from "./amount-words.ts";
export { checkBalance, checkWeekBalance } from "./check-balance.ts";
export { COMPONENTS, creditAtSchool, type Component, type Credited } from "./credit-item.ts";
export {
  creditingKindOf,
  VEGETABLE_SUBGROUPS,
  type CreditingKind,
  type VegetableSubgroup,
} from "./crediting-kind.ts";
export { onPlate, PLATE_GROUPS, type PlateGroup } from "./plate.ts";
export { portionsIn } from "./portions.ts";
export { BALANCE_SCHEMES, schemeWord, type BalanceScheme } from "./scheme.ts";
export { countAtSchool, countWeekAtSchool, type SchoolLunch } from "./school-lunch.ts";
export { SCHOOL_PATTERNS, type SchoolGrade } from "./school-pattern.ts";
export { balanceOfWeek, type BalanceRow, type WeekBalance } from "./week-balance.ts";
