import { addDays, dayFrom, daysBetween, partsOf, weekdayOf, type Day } from "./day.ts";

/** The Monday on or before a day: the start of its ISO 8601 week. */
export function mondayOf(day: Day): Day {
  return addDays(day, 1 - weekdayOf(day));
}

/** The Monday `weeks` later. */
export function weeksLater(monday: Day, weeks: number): Day {
  return addDays(monday, weeks * 7);
}

/** ISO 8601 week number and the year it belongs to: week 1 holds the year's first Thursday. */
export function isoWeekOf(day: Day): { readonly year: number; readonly week: number } {
  const thursday = addDays(mondayOf(day), 3);
  const [year] = partsOf(thursday);
  return { year, week: Math.floor(daysBetween(dayFrom(year, 1, 1), thursday) / 7) + 1 };
}

/** Number of ISO weeks in a year, 52 or 53. 28 December is always in the last one (ISO 8601). */
export function isoWeeksInYear(year: number): 52 | 53 {
  return isoWeekOf(dayFrom(year, 12, 28)).week as 52 | 53;
}

/** The seven days of the week that begins on a Monday. */
export function daysOfWeek(monday: Day): Day[] {
  return Array.from({ length: 7 }, (_, offset) => addDays(monday, offset));
}

/** First day of the month a day lies in. */
export function monthStart(day: Day): Day {
  const [year, month] = partsOf(day);
  return dayFrom(year, month, 1);
}

/** First day of the month that lies `months` later. */
export function monthsLater(day: Day, months: number): Day {
  const [year, month] = partsOf(day);
  return dayFrom(year, month + months, 1);
}

/** The Mondays whose Thursday lies in the month, so that each week belongs to one month. */
export function weeksOfMonth(day: Day): Day[] {
  const first = monthStart(day);
  const next = monthsLater(day, 1);
  const mondays: Day[] = [];
  for (let monday = mondayOf(first); monday < next; monday = addDays(monday, 7)) {
    const thursday = addDays(monday, 3);
    if (thursday >= first && thursday < next) mondays.push(monday);
  }
  return mondays;
}
