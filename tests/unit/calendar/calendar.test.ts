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
  isTimeZone,
  mondayOf,
  overlapsSeason,
  partsOf,
  timeZones,
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

test.each([
  // A break from Monday 6 to Friday 10 April 2026: the whole weeks around it, by any calendar.
  ["week-before", "2026-03-30", "2026-04-05"],
  ["during", "2026-04-06", "2026-04-10"],
  ["week-after", "2026-04-13", "2026-04-19"],
] as const)(
  "a season of %s a break holds its first and last day and no other",
  (weeks, from, to) => {
    const window = { kind: "event", event: "spring  Break", weeks } as const;
    const events = [
      { label: "Spring break", from: day("2026-04-06"), to: day("2026-04-10") },
      { label: "May Day", from: day("2026-05-04"), to: day("2026-05-04") },
    ];
    const within = (one: string): boolean => overlapsSeason(window, day(one), day(one), events);
    expect(within(from) && within(to)).toBe(true);
    expect(within(addDays(day(from), -1)) || within(addDays(day(to), 1))).toBe(false);
    expect(overlapsSeason(window, day(from), day(to))).toBe(false);
  },
);

test("a break that begins on a Saturday begins with the school week after it, and returns each year", () => {
  const window = { kind: "event", event: "Winter break", weeks: "week-before" } as const;
  const events = [
    { label: "Winter break", from: day("2025-12-20"), to: day("2026-01-04") },
    { label: "Winter break", from: day("2026-12-19"), to: day("2027-01-03") },
  ];
  const within = (monday: string): boolean =>
    overlapsSeason(window, day(monday), addDays(day(monday), 4), events);
  expect(["2025-12-08", "2025-12-15", "2025-12-22"].map(within)).toEqual([false, true, false]);
  expect(["2026-12-07", "2026-12-14", "2026-12-21"].map(within)).toEqual([false, true, false]);
});

test("every zone of the platform's own list can be picked and is taken, and no other word is", () => {
  const zones = timeZones();
  // ECMA-402: the canonical names of the IANA time zone database that the platform knows.
  for (const zone of Intl.supportedValuesOf("timeZone")) {
    expect(zones).toContain(zone);
    expect(isTimeZone(zone), zone).toBe(true);
  }
  for (const word of ["", "+02:00", "Oslo", "Mars/Olympus"]) expect(isTimeZone(word)).toBe(false);
});
