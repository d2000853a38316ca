import { mondayOf, day, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";

/** The Monday of the latest week with a packed lunch, else of the latest week there is; undefined without one. */
export async function latestPacked(db: Db, today: Day): Promise<Day | undefined> {
  const lunch =
    (await db.lunch.findFirst({
      where: { date: { lte: today }, packedAt: { not: null } },
      orderBy: { date: "desc" },
      select: { date: true },
    })) ?? (await db.lunch.findFirst({ orderBy: { date: "desc" }, select: { date: true } }));
  return lunch ? mondayOf(day(lunch.date)) : undefined;
}
