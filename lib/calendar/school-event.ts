import { z } from "zod";
import { addDays, weekdayOf, type Day } from "./day.ts";
import { mondayOf, weeksLater } from "./week.ts";

/** A named event of the school year, both ends included; one that returns has its name each year. */
export type SchoolEvent = { readonly label: string; readonly from: Day; readonly to: Day };

/** Which weeks a season around an event of the school year takes. */
export const EventWeeks = z.enum(["week-before", "during", "week-after"]);
export type EventWeeks = z.infer<typeof EventWeeks>;

/** Events are known by their names, however these are capitalised or spaced. */
export function isSameEvent(one: string, other: string): boolean {
  const plain = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
  return plain(one) === plain(other);
}

/**
 * The days, both ends included, that "the week before", "during" or "the week after" an event takes.
 * Weeks are whole ISO weeks, as a theme is on for one: a break that begins on a Saturday or Sunday
 * begins with the week after it.
 */
export function eventSpan(
  { from, to }: SchoolEvent,
  weeks: EventWeeks,
): { readonly from: Day; readonly to: Day } {
  const opens = mondayOf(weekdayOf(from) >= 6 ? addDays(from, 2) : from);
  switch (weeks) {
    case "week-before":
      return { from: weeksLater(opens, -1), to: addDays(opens, -1) };
    case "during":
      return { from, to };
    case "week-after": {
      const monday = weeksLater(mondayOf(to), 1);
      return { from: monday, to: addDays(monday, 6) };
    }
  }
}
