import { day, type Day } from "#lib/calendar/index.ts";
import type { Context } from "./context.ts";

/** The day of the next lunch whose lid is not shut, today's first; today where none is pencilled. */
export async function findNextLunch({ db, today }: Context): Promise<Day> {
  const next = await db.lunch.findFirst({
    where: { date: { gte: today }, packedAt: null },
    orderBy: { date: "asc" },
    select: { date: true },
  });
  return next ? day(next.date) : today;
}
