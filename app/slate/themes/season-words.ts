import {
  MONTHS,
  type EventWeeks,
  type MovingFeast,
  type SeasonWindow,
} from "#lib/calendar/index.ts";

const FEAST_WORDS: Readonly<Record<MovingFeast, string>> = {
  shrove: "Shrove Tuesday",
  easter: "Easter Sunday",
  "easter-monday": "Easter Monday",
  ascension: "Ascension Day",
  pentecost: "Pentecost",
};

/** A moving feast as a page names it. */
export function feastWords(feast: MovingFeast): string {
  return FEAST_WORDS[feast];
}

const WEEKS_WORDS: Readonly<Record<EventWeeks, string>> = {
  "week-before": "the week before",
  during: "during",
  "week-after": "the week after",
};

/** Where a season lies beside an event, as a page names it. */
export function weeksWords(weeks: EventWeeks): string {
  return WEEKS_WORDS[weeks];
}

/** "all year", "May, June", "around 1 December, 14 days before to 0 after" */
export function seasonWords(season: SeasonWindow): string {
  const around = (centre: string, { before, after }: { before: number; after: number }): string =>
    `around ${centre}, ${before} days before to ${after} after`;
  switch (season.kind) {
    case "always":
      return "all year";
    case "months":
      return season.months.map((month) => MONTHS[month - 1] ?? "").join(", ");
    case "date":
      return around(`${season.date} ${MONTHS[season.month - 1] ?? ""}`, season);
    case "feast":
      return around(feastWords(season.feast), season);
    case "event":
      return `${weeksWords(season.weeks)} ${season.event}`;
  }
}
