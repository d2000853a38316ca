/** Repeats: what has been on, what comes back too early, and how closely a week echoes earlier ones. */
export { describeEcho } from "./describe-echo.ts";
export { describeRest } from "./describe-rest.ts";
export {
  closestWeeks,
  distinctivenessOf,
  ECHO_WEIGHTS,
  echoOf,
  type Distinctiveness,
  type Echo,
  type EchoAspect,
  type EchoReason,
} from "./echo.ts";
export { appearancesOf, historyOf, mergeInHistory, type History } from "./history.ts";
export { likelyEchoOf, type LikelyEcho } from "./likely-echo.ts";
export { nearThemes, type NamedTheme, type NearTheme } from "./near-themes.ts";
export {
  checkItemRest,
  checkRest,
  DEFAULT_REST_DAYS,
  nextPossible,
  restKey,
  type RestRules,
  type RestWarning,
} from "./rest.ts";
export { REPEAT_LEVELS, type RepeatLevel, type ShownItem, type ShownWeek } from "./shown.ts";
