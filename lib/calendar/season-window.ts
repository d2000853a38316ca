import { z } from "zod";
import { addDays, Day, dayFrom, partsOf } from "./day.ts";
import { FEAST_OFFSETS, feastDay, type MovingFeast } from "./easter.ts";
import { EventWeeks, eventSpan, isSameEvent, type SchoolEvent } from "./school-event.ts";

const Month = z.number().int().min(1).max(12);

/**
 * When a theme or food is in season: always, some months, around a fixed date of the year,
 * around a moving feast, or by an event of the school year. `before` and `after` are days around the date.
 */
export const SeasonWindow = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("always") }),
  z.object({ kind: z.literal("months"), months: z.array(Month).min(1) }),
  z.object({
    kind: z.literal("date"),
    month: Month,
    date: z.number().int().min(1).max(31),
    before: z.number().int().min(0).max(120),
    after: z.number().int().min(0).max(120),
  }),
  z.object({
    kind: z.literal("feast"),
    feast: z.enum(Object.keys(FEAST_OFFSETS) as [MovingFeast, ...MovingFeast[]]),
    before: z.number().int().min(0).max(120),
    after: z.number().int().min(0).max(120),
  }),
  z.object({
    kind: z.literal("event"),
    event: z.string().trim().min(1).max(120),
    weeks: EventWeeks,
  }),
]);
export type SeasonWindow = z.infer<typeof SeasonWindow>;

/**
 * True when any day from `from` to `to` lies in the window. A window by an event that is not among
 * `events` is never open.
 */
export function overlapsSeason(
  window: SeasonWindow,
  from: Day,
  to: Day,
  events: readonly SchoolEvent[] = [],
): boolean {
  switch (window.kind) {
    case "always":
      return true;
    case "months": {
      const months = new Set(window.months);
      return months.has(partsOf(from)[1]) || months.has(partsOf(to)[1]);
    }
    case "date":
      return yearsAround(from).some((year) =>
        touches(dayFrom(year, window.month, window.date), window, from, to),
      );
    case "feast":
      return yearsAround(from).some((year) =>
        touches(feastDay(window.feast, year), window, from, to),
      );
    case "event":
      return events
        .filter(({ label }) => isSameEvent(label, window.event))
        .map((event) => eventSpan(event, window.weeks))
        .some((span) => span.from <= to && span.to >= from);
  }
}

function yearsAround(day: Day): number[] {
  const [year] = partsOf(day);
  return [year - 1, year, year + 1];
}

function touches(
  centre: Day,
  around: { readonly before: number; readonly after: number },
  from: Day,
  to: Day,
): boolean {
  return addDays(centre, -around.before) <= to && addDays(centre, around.after) >= from;
}
