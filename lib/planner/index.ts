/** Planner: next weeks' themes and lunches, proposed near the best there is, with reasons. */
export { USUAL_MONTH, type MonthOptions } from "./improve-month.ts";
export { placeAsAsked, type Mate, type Placing } from "./mate.ts";
export { allThemeBounds } from "./bound-themes.ts";
export { planMonth, type PlanStep, type ThemeOffer } from "./plan-month.ts";
export { FIRST_STEPS, proposePlan, type Proposal, type ProposeOptions } from "./propose.ts";
export {
  FORBIDDING_KINDS,
  type Forbidden,
  type ForbiddingKind,
  type Lock,
  type NewFoodLimits,
  type Owed,
  type Plan,
  type PlanChild,
  type PlanDay,
  type PlanItem,
  type PlannedLunch,
  type PlannedWeek,
  type PlanPart,
  type PlanProblem,
  type PlanShop,
  type PlanTheme,
  type PlanWeek,
  type Quota,
  type RestGroup,
  type ThemesApart,
  type Wish,
} from "./problem.ts";
export { allowPlan, findConflict, onlyDays, type Conflict, type Fix } from "./explain/conflict.ts";
export { type RuleGroup } from "./explain/rule-groups.ts";
export { exchanged, reasonsFor, standIns, type StandIn } from "./explain/stand-ins.ts";
export { whyNot, type WhyNot } from "./explain/why-not.ts";
export { lpText } from "./lp-text.ts";
export { momentsOf, type Moment } from "./moments.ts";
export { monthProgram } from "./month-program.ts";
export { type LinearProgram } from "./program.ts";
export { readyLunch, type ReadyFood, type ReadyLunch, type ReadyPlace } from "./ready-lunch.ts";
export { scorePlan, type AimPoints, type Score } from "./score-plan.ts";
export {
  isSolved,
  type Solution,
  type SolveLimits,
  type Solver,
  type SolverSession,
  withSession,
} from "./solver.ts";
export { spreadThemes, type SpreadChoice, type SpreadTheme } from "./spread-themes.ts";
export { weekShops } from "./week-shops.ts";
export { AIM_WORDS, AIMS, DEFAULT_WEIGHTS, type Aim, type Weights } from "./weights.ts";
