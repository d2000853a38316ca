import { z } from "zod";

const MS_PER_DAY = 86_400_000;
const PATTERN = /^(\d{4})-(\d{2})-(\d{2})$/;

/** A calendar date of the plan, `YYYY-MM-DD`, without a clock or a zone (ISO 8601-1 calendar date). */
export const Day = z
  .string()
  .refine(isRealDay, { error: "This is not a date. Use year-month-day, like 2026-03-11." })
  .brand<"Day">();
export type Day = z.infer<typeof Day>;

/** The day a text names; throws when it names none (a bug in the caller, not bad input). */
export function day(text: string): Day {
  return Day.parse(text);
}

/** Days since 1970-01-01, which is 0. */
export function dayNumber(of: Day): number {
  const [year, month, date] = partsOf(of);
  return Date.UTC(year, month - 1, date) / MS_PER_DAY;
}

/** The day with a given number (see `dayNumber`). */
export function dayOfNumber(number: number): Day {
  return new Date(number * MS_PER_DAY).toISOString().slice(0, 10) as Day;
}

/** The day that lies `days` later (earlier when negative). */
export function addDays(from: Day, days: number): Day {
  return dayOfNumber(dayNumber(from) + days);
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** ISO weekday: Monday 1 … Sunday 7. */
export function weekdayOf(of: Day): Weekday {
  return (((((dayNumber(of) + 3) % 7) + 7) % 7) + 1) as Weekday;
}

/** ISO weekday number, Monday 1 … Sunday 7. */
export type Weekday = 1 | 2 | 3 | 4 | 5 | 6 | 7;

/** Year, month (1–12) and date (1–31) of a day. */
export function partsOf(of: Day): [year: number, month: number, date: number] {
  return [Number(of.slice(0, 4)), Number(of.slice(5, 7)), Number(of.slice(8, 10))];
}

/** The day made of its parts; months and dates beyond their range roll over. */
export function dayFrom(year: number, month: number, date: number): Day {
  return dayOfNumber(Date.UTC(year, month - 1, date) / MS_PER_DAY);
}

function isRealDay(text: string): boolean {
  const match = PATTERN.exec(text);
  if (!match) return false;
  const [, year, month, date] = match.map(Number) as [number, number, number, number];
  if (year < 1900 || year > 2200) return false;
  const made = new Date(Date.UTC(year, month - 1, date));
  return made.getUTCMonth() === month - 1 && made.getUTCDate() === date;
}
