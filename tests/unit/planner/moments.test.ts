import { expect, test } from "vitest";
import { addDays, day, weeksLater } from "#lib/calendar/index.ts";
import { momentsOf } from "#lib/planner/index.ts";

const mondays = [0, 1, 2, 3].map((week) => weeksLater(day("2026-03-23"), week));
const days = mondays.flatMap((monday) => [0, 1, 2, 3, 4].map((after) => addDays(monday, after)));

test("feasts stand in the week they fall in", () => {
  // Easter Sunday 2026 is 5 April: U.S. Naval Observatory and church calendars (from memory).
  const words = momentsOf(mondays, days, 0, undefined);
  expect(words).toEqual([
    { monday: "2026-03-30", words: "Easter is on Sun 5 April" },
    { monday: "2026-04-06", words: "Easter Monday is on Mon 6 April" },
  ]);
});

test("round lunches and the day of the series are counted", () => {
  const [round, old] = momentsOf([day("2026-04-13")], days.slice(15), 298, day("2025-04-15"));
  expect(round).toEqual({
    monday: "2026-04-13",
    words: "Lunch 300 of the series is on Tue 14 April",
  });
  expect(old?.words).toBe("The series is one year old on Wed 15 April");
  expect(momentsOf([day("2026-04-13")], days.slice(15), 301, day("2026-04-15"))).toEqual([]);
});
