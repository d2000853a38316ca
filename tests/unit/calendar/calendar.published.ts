/**
 * Years from 2000 to 2050 with 53 weeks: by ISO 8601-1 (week 1 holds the first Thursday) those that
 * begin on a Thursday, and leap years that begin on a Wednesday. List from memory.
 */
export const LONG_YEARS = [2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048];

/** Days at the turn of a year and their ISO 8601 week, from memory. */
export const WEEKS_AT_THE_TURN: readonly [day: string, year: number, week: number][] = [
  ["2005-01-01", 2004, 53],
  ["2005-01-02", 2004, 53],
  ["2005-12-31", 2005, 52],
  ["2007-01-01", 2007, 1],
  ["2008-12-28", 2008, 52],
  ["2008-12-29", 2009, 1],
  ["2010-01-03", 2009, 53],
  ["2010-01-04", 2010, 1],
  ["2027-01-03", 2026, 53],
];

/** Western Easter Sundays as printed in church calendars, from memory; 1943 and 2038: the latest date. */
export const EASTER_SUNDAYS = [
  ...["1943-04-25", "2000-04-23", "2008-03-23", "2011-04-24", "2016-03-27", "2019-04-21"],
  ...["2020-04-12", "2021-04-04", "2022-04-17", "2023-04-09", "2024-03-31", "2025-04-20"],
  ...["2026-04-05", "2027-03-28", "2028-04-16", "2029-04-01", "2030-04-21", "2038-04-25"],
];
