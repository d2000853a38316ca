import { checkWeekBalance } from "./balance/index.ts";
import type { BoxLunch } from "./box.ts";
import { checkLunch, type CheckGround } from "./check-lunch.ts";
import type { Finding } from "./finding.ts";

/** What is found in a week: each lunch by its id, and what only the week as a whole can tell. */
export type WeekFindings = {
  readonly lunches: ReadonlyMap<string, readonly Finding[]>;
  readonly week: readonly Finding[];
};

/** Checks the lunches of a week, each on the ground of its own day. */
export function checkWeek(
  lunches: readonly BoxLunch[],
  groundOn: (lunch: BoxLunch) => CheckGround,
): WeekFindings {
  const [first] = lunches;
  return {
    lunches: new Map(lunches.map((lunch) => [lunch.id, checkLunch(lunch, groundOn(lunch))])),
    week: first === undefined ? [] : checkWeekBalance(lunches, groundOn(first).scheme),
  };
}
