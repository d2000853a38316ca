import { addDays, dayFrom, type Day } from "./day.ts";

/**
 * Western Easter Sunday of a Gregorian year.
 * Source: the anonymous Gregorian algorithm ("Meeus/Jones/Butcher"), Nature 13 (1876) 487;
 * J. Meeus, Astronomical Algorithms, ch. 8 (from memory).
 */
export function easterSunday(year: number): Day {
  const golden = year % 19;
  const century = Math.floor(year / 100);
  const inCentury = year % 100;
  const leapCenturies = Math.floor(century / 4);
  const centuryRest = century % 4;
  const correction = Math.floor((century + 8) / 25);
  const moonShift = Math.floor((century - correction + 1) / 3);
  const epact = (19 * golden + century - leapCenturies - moonShift + 15) % 30;
  const leaps = Math.floor(inCentury / 4);
  const leapRest = inCentury % 4;
  const toSunday = (32 + 2 * centuryRest + 2 * leaps - epact - leapRest) % 7;
  const late = Math.floor((golden + 11 * epact + 22 * toSunday) / 451);
  const month = Math.floor((epact + toSunday - 7 * late + 114) / 31);
  const date = ((epact + toSunday - 7 * late + 114) % 31) + 1;
  return dayFrom(year, month, date);
}

/** Feasts that move with Easter, as days after Easter Sunday. Common practice of the church year. */
export const FEAST_OFFSETS = {
  shrove: -47,
  easter: 0,
  "easter-monday": 1,
  ascension: 39,
  pentecost: 49,
} as const;
export type MovingFeast = keyof typeof FEAST_OFFSETS;

/** The day of a moving feast in a year. */
export function feastDay(feast: MovingFeast, year: number): Day {
  return addDays(easterSunday(year), FEAST_OFFSETS[feast]);
}
