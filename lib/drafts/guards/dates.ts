import { addDays, Day, dayFrom, MONTHS, partsOf } from "#lib/calendar/index.ts";
import { PRIVATE_KINDS } from "../template/kinds.ts";
import { findIn, strike, type Check, type GuardGround, type OwnSentence } from "./check.ts";
import { spansOf, type Span } from "./private-words.ts";

const MONTH = MONTHS.map((name) => `${name.slice(0, 3)}(?:${name.slice(3)})?`).join("|");
const WRITTEN = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:(\\d{1,2})(?:st|nd|rd|th)?(?: of)? (${MONTH})|(${MONTH}) (\\d{1,2})(?:st|nd|rd|th)?)(?:,? (\\d{4}))?(?![\\p{L}\\p{N}])|(\\d{4}-\\d{2}-\\d{2})`,
  "giu",
);
const SOON =
  /(?<![\p{L}])(?:tomorrow|next (?:monday|tuesday|wednesday|thursday|friday|saturday|sunday|week|month))(?![\p{L}])/giu;

/**
 * No date still to come: where a family will be, and when, is not for the public. Sentences that tell
 * of a lunch to come count too.
 */
export function checkDates(
  lines: readonly (readonly OwnSentence[])[],
  { today, facts, kind }: GuardGround,
): Check {
  const ahead = new Set(
    facts
      .filter((fact) => fact.on !== null && fact.on >= today && tellsAhead(fact.detail))
      .map(({ id }) => id),
  );
  const dayOf = new Map(facts.map(({ id, on }) => [id, on]));
  // "Tomorrow" and the day after it, said of a day long enough ago, are over as well.
  const isOver = (sentence: OwnSentence): boolean =>
    sentence.facts.length > 0 &&
    sentence.facts.every((id) => {
      const on = dayOf.get(id);
      return on !== undefined && on !== null && addDays(on, 2) < today;
    });
  const search = (sentence: OwnSentence): Span[] => {
    const { text } = sentence;
    if (sentence.facts.some((id) => ahead.has(id))) return [[0, text.length]];
    // A quick look before the slow one: no digit, no date.
    const dates = /\d/u.test(text) ? datesIn(text, today) : [];
    const soon = /tomorrow|next/iu.test(text) ? spansOf(text, SOON) : [];
    const isToCome = ([from, to]: Span): boolean =>
      !/tomorrow/iu.test(text.slice(from, to)) || !isOver(sentence);
    return [...soon.filter(isToCome), ...dates];
  };
  return {
    ...{ kind: "dates", level: "look", title: "No date still to come" },
    passed: "Nothing tells where anyone will be, and when.",
    findings:
      PRIVATE_KINDS.has(kind) || kind === "outline"
        ? []
        : findIn(lines, "dates", search, (words, place) => ({
            text: `“${words}” is still to come. Wait until it is over, or leave it out.`,
            fixes: [strike(place)],
          })),
  };
}

function tellsAhead(detail: object): boolean {
  return "tense" in detail && detail.tense === "will";
}

/** Written dates that lie after a day; without a year, the next one to come is meant. */
function datesIn(text: string, today: Day): Span[] {
  return [...text.matchAll(WRITTEN)].flatMap((hit) => {
    const [words, dayFirst, monthAfter, monthFirst, dayAfter, year, iso] = hit;
    const on =
      iso ?? written(Number(dayFirst ?? dayAfter), monthAfter ?? monthFirst ?? "", year, today);
    const date = Day.safeParse(on);
    const isAhead = date.success && date.data > today;
    return isAhead ? [[hit.index, hit.index + words.length] as const] : [];
  });
}

/** Half a year back or forward decides which year a date without one belongs to. */
function written(date: number, name: string, year: string | undefined, today: Day): string {
  const month =
    MONTHS.findIndex((one) => one.slice(0, 3).toLowerCase() === name.slice(0, 3).toLowerCase()) + 1;
  if (month === 0 || date < 1 || date > 31) return "";
  if (year !== undefined) return dayFrom(Number(year), month, date);
  const here = dayFrom(partsOf(today)[0], month, date);
  if (here < addDays(today, -183)) return dayFrom(partsOf(today)[0] + 1, month, date);
  return here > addDays(today, 183) ? dayFrom(partsOf(today)[0] - 1, month, date) : here;
}
