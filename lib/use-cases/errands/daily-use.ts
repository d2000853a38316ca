import { groupBy, numberOf, sumOfFractions } from "#lib/base/index.ts";
import { addDays, mondayOf, weeksLater, type Day } from "#lib/calendar/index.ts";
import { readChildren, readEpisodes, type Db } from "#lib/db/index.ts";
import { needsOf } from "#lib/shopping/index.ts";
import { plannedItems } from "./planned-items.ts";

const LOOK_BACK_WEEKS = 8;
/** Packed less often than this in the weeks looked at, a food is no staple. */
const TIMES_MIN = 4;

/**
 * Grams as purchased that each food took a day, over the last eight weeks and every day of them, for foods
 * packed often: what a level for a staple can start from. Foods packed rarely are left out.
 */
export async function dailyUse(db: Db, today: Day): Promise<ReadonlyMap<string, number>> {
  const from = weeksLater(mondayOf(today), -LOOK_BACK_WEEKS);
  const [children, episodes] = await Promise.all([
    readChildren(db),
    readEpisodes(db, from, addDays(mondayOf(today), -7)),
  ]);
  const items = plannedItems(
    episodes.flatMap((episode) => episode.lunches.filter((lunch) => lunch.isPacked)),
    children,
    ["packed", "stepped-in"],
  );
  const { needs } = needsOf(items);
  return new Map(
    [...groupBy(needs, (need) => need.foodId)]
      .filter(([, own]) => own.length >= TIMES_MIN)
      .map(([foodId, own]) => {
        const grams = numberOf(sumOfFractions(own.map((need) => need.asPurchased)));
        return [foodId, grams / (LOOK_BACK_WEEKS * 7)];
      }),
  );
}
