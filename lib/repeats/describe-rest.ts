import { mediumDay, partsOf } from "#lib/calendar/index.ts";
import type { RestWarning } from "./rest.ts";
import type { RepeatLevel } from "./shown.ts";

/**
 * A rest warning in one sentence: what, when last, how many days, which rule. Names come from the
 * caller: `nameOf("food", id)`.
 */
export function describeRest(
  warning: RestWarning,
  nameOf: (level: RepeatLevel, id: string) => string,
): string {
  const { level, what, lastOn, daysAgo, restDays, rule } = warning;
  const name = nameOf(level, what);
  const span = daysAgo === 1 ? "1 day" : `${daysAgo} days`;
  const whose = rule === "own" ? "its own rule" : `the rule for any ${level}`;
  const last = `${mediumDay(lastOn)} ${partsOf(lastOn)[0]}`;
  return `The ${level} "${name}" was last on ${last}, ${span} before; ${whose} is ${restDays} days.`;
}
