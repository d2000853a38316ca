import { addDays, overlapsSeason, type Day, type SeasonWindow } from "#lib/calendar/index.ts";
import type { PlanTheme } from "#lib/planner/index.ts";

/** Points for a theme in the week of its feast or date: about what a theme loses that is half like another. */
const NEAR_ITS_DAY = 100;

/** What a theme with a day of its own gains in the weeks around that day. */
export function bonusNearItsDay(season: SeasonWindow, mondays: readonly Day[]): PlanTheme["bonus"] {
  if (season.kind !== "feast" && season.kind !== "date") return [];
  return mondays
    .filter((monday) => overlapsSeason(season, monday, addDays(monday, 6)))
    .map((monday) => ({ monday, points: NEAR_ITS_DAY, why: "its day is near" }));
}
