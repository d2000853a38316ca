import {
  addDays,
  dayFrom,
  easterSunday,
  mondayOf,
  partsOf,
  type Day,
} from "#lib/calendar/index.ts";
import type { DemoDayOff } from "./records.ts";

/**
 * Days off of the invented school from `from` to `to`: the breaks of a usual school year (common
 * practice, no source). Breaks that touch `keepFrom`–`keepTo` are left out, so that the demo has
 * something to shoot whenever it is loaded.
 */
export function daysOffBetween(
  from: Day,
  to: Day,
  keep: { readonly from: Day; readonly to: Day },
): DemoDayOff[] {
  const [first, last] = [partsOf(from)[0] - 1, partsOf(to)[0]];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    .flatMap(breaksOf)
    .filter((off) => off.to >= from && off.from <= to)
    .filter((off) => off.to < keep.from || off.from > keep.to)
    .sort((a, b) => (a.from < b.from ? -1 : 1));
}

function breaksOf(year: number): DemoDayOff[] {
  const monday = (month: number, date: number): Day => mondayOf(dayFrom(year, month, date));
  const easter = easterSunday(year);
  const off = (id: string, label: string, from: Day, days: number): DemoDayOff => ({
    ...{ id: `${id}-${year}`, label, from, to: addDays(from, days - 1) },
  });
  return [
    off("half-term-winter", "Winter half-term", monday(2, 18), 5),
    off("easter", "Easter holidays", addDays(easter, -6), 12),
    off("may-day", "May Day", monday(5, 7), 1),
    off("half-term-may", "Whitsun half-term", monday(5, 28), 5),
    off("boat-blessing", "Blessing of the boats", addDays(monday(6, 18), 4), 1),
    off("summer", "Summer holidays", monday(7, 24), 6 * 7 - 2),
    off("half-term-autumn", "Autumn half-term", monday(10, 28), 5),
    off("teachers", "Teachers' training day", addDays(monday(11, 25), 4), 1),
    off("christmas", "Christmas holidays", monday(12, 24), 12),
  ];
}
