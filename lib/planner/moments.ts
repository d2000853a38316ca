import {
  addDays,
  daysBetween,
  FEAST_OFFSETS,
  feastDay,
  mediumDay,
  mondayOf,
  partsOf,
  type Day,
  type MovingFeast,
} from "#lib/calendar/index.ts";

/** Something a week may be about: a feast, a round number of lunches, the day of the series. */
export type Moment = { readonly monday: Day; readonly words: string };

const FEASTS: Readonly<Record<MovingFeast, string>> = {
  shrove: "Shrove Tuesday",
  easter: "Easter",
  "easter-monday": "Easter Monday",
  ascension: "Ascension Day",
  pentecost: "Pentecost",
};

/**
 * The moments of some weeks, in order. `shootDays` are the planned days in date order;
 * `lunchesBefore` the lunches before the first of them; `firstOn` the day of the very first lunch.
 */
export function momentsOf(
  mondays: readonly Day[],
  shootDays: readonly Day[],
  lunchesBefore: number,
  firstOn: Day | undefined,
): Moment[] {
  return mondays.flatMap((monday) => [
    ...feastsIn(monday),
    ...shootDays.flatMap((date, place) => {
      const number = lunchesBefore + place + 1;
      return mondayOf(date) === monday && isRound(number)
        ? [{ monday, words: `Lunch ${number} of the series is on ${mediumDay(date)}` }]
        : [];
    }),
    ...yearsIn(monday, firstOn),
  ]);
}

/** Fifty, then every hundred (common practice, no source). */
function isRound(number: number): boolean {
  return number === 50 || (number > 0 && number % 100 === 0);
}

function feastsIn(monday: Day): Moment[] {
  const [year] = partsOf(addDays(monday, 6));
  const feasts = Object.keys(FEAST_OFFSETS) as MovingFeast[];
  return feasts
    .map((feast) => ({ feast, on: feastDay(feast, year) }))
    .filter(({ on }) => isInWeek(on, monday))
    .map(({ feast, on }) => ({ monday, words: `${FEASTS[feast]} is on ${mediumDay(on)}` }));
}

function yearsIn(monday: Day, firstOn: Day | undefined): Moment[] {
  if (firstOn === undefined) return [];
  return Array.from({ length: 7 }, (_, after) => addDays(monday, after)).flatMap((date) => {
    const years = partsOf(date)[0] - partsOf(firstOn)[0];
    const isDay = date.slice(5) === firstOn.slice(5) && years > 0;
    const span = years === 1 ? "one year" : `${years} years`;
    return isDay ? [{ monday, words: `The series is ${span} old on ${mediumDay(date)}` }] : [];
  });
}

function isInWeek(date: Day, monday: Day): boolean {
  const after = daysBetween(monday, date);
  return after >= 0 && after < 7;
}
