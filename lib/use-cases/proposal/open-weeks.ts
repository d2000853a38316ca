import { mondayOf, weeksOfMonth, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import { shootDays } from "../pencil-week.ts";

/** The Mondays of a month's weeks from today on that have no episode and at least one shoot day. */
export async function openWeeks(
  { db, today }: { readonly db: Db; readonly today: Day },
  month: Day,
): Promise<Day[]> {
  const mondays = weeksOfMonth(month).filter((monday) => monday >= mondayOf(today));
  const taken = await db.episode.findMany({ where: { weekOf: { in: mondays } } });
  const empty = mondays.filter((monday) => !taken.some((one) => one.weekOf === monday));
  const days = await Promise.all(empty.map((monday) => shootDays(db, monday)));
  return empty.filter((_, index) => (days[index]?.length ?? 0) > 0);
}
