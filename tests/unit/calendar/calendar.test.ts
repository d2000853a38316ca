import { getISOWeek, getISOWeekYear, parseISO } from "date-fns";
import { expect, test } from "vitest";
import {
  addDays,
  Day,
  day,
  daysBetween,
  easterSunday,
  feastDay,
  isoWeekOf,
  isoWeeksInYear,
  mondayOf,
  overlapsSeason,
  partsOf,
  weekdayOf,
  weeksOfMonth,
} from "#lib/calendar/index.ts";
import { EASTER_SUNDAYS, LONG_YEARS, WEEKS_AT_THE_TURN } from "./calendar.published.ts";

test("the years of 53 weeks are those of ISO 8601", () => {
  const years = Array.from({ length: 51 }, (_, offset) => 2000 + offset);
  expect(years.filter((year) => isoWeeksInYear(year) === 53)).toEqual(LONG_YEARS);
});

test.each(WEEKS_AT_THE_TURN)("%s lies in ISO year %i, week %i", (text, year, week) => {
  expect(isoWeekOf(day(text))).toEqual({ year, week });
});

test("every day of 28 years has the week that date-fns gives it", () => {
  for (let on = day("2004-01-01"); on < "2032-01-01"; on = addDays(on, 1)) {
    const reference = parseISO(on);
    expect(isoWeekOf(on), on).toEqual({
      year: getISOWeekYear(reference),
      week: getISOWeek(reference),
    });
  }
});

test.each(EASTER_SUNDAYS)("Easter falls on %s", (text) => {
  expect(easterSunday(partsOf(day(text))[0])).toBe(text);
  expect(weekdayOf(day(text))).toBe(7);
});

test("feasts move with Easter", () => {
  expect(feastDay("shrove", 2026)).toBe("2026-02-17");
  expect(feastDay("ascension", 2026)).toBe("2026-05-14");
  expect(feastDay("pentecost", 2026)).toBe("2026-05-24");
});

test("days are counted without clocks: changes to and from summer time lose none", () => {
  expect(addDays(day("2026-03-28"), 2)).toBe("2026-03-30");
  expect(addDays(day("2026-10-24"), 2)).toBe("2026-10-26");
  expect(daysBetween(day("2026-01-01"), day("2027-01-01"))).toBe(365);
  expect(addDays(day("2028-02-28"), 1)).toBe("2028-02-29");
});

test("dates that no calendar has are not days", () => {
  for (const text of ["2026-02-29", "2026-13-01", "2026-04-31", "2026-4-01", "next week"])
    expect(Day.safeParse(text).success, text).toBe(false);
});

test("each week belongs to the one month its Thursday lies in", () => {
  const mondays = Array.from({ length: 12 }, (_, month) =>
    weeksOfMonth(day(`2026-${String(month + 1).padStart(2, "0")}-15`)),
  ).flat();
  expect(mondays).toHaveLength(53);
  expect(new Set(mondays).size).toBe(53);
  expect(mondays.every((monday) => mondayOf(monday) === monday)).toBe(true);
});

test("a season around a date reaches over the turn of the year and ends on its last day", () => {
  const window = { kind: "date", month: 12, date: 31, before: 2, after: 3 } as const;
  const within = (text: string): boolean => overlapsSeason(window, day(text), day(text));
  expect(["2025-12-28", "2025-12-29", "2026-01-03", "2026-01-04"].map(within)).toEqual([
    ...[false, true, true, false],
  ]);
});

test("a season around a feast moves with it", () => {
  const window = { kind: "feast", feast: "easter", before: 7, after: 0 } as const;
  expect(overlapsSeason(window, day("2026-03-23"), day("2026-03-27"))).toBe(false);
  expect(overlapsSeason(window, day("2026-03-23"), day("2026-03-29"))).toBe(true);
  expect(overlapsSeason(window, day("2027-03-22"), day("2027-03-26"))).toBe(true);
});
