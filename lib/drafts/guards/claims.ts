import { PRIVATE_KINDS } from "../template/kinds.ts";
import { findIn, strike, type Check, type GuardGround, type OwnSentence } from "./check.ts";
import { folded, literal, spansOf, type Span } from "./private-words.ts";

type Lines = readonly (readonly OwnSentence[])[];

/** Words that promise what no lunch can. */
const PROMISES =
  /(?<![\p{L}\p{N}])(?:safe(?:ly|r|st|ty)?|free (?:from|of)|[\p{L}]+[- ]free|healthy|healthier|healthiest|health food|nutritious|wholesome|hypoallergenic|superfoods?|detox|guilt[- ]free|immune[- ]boosting|good for you|doctor[- ]approved)(?![\p{L}\p{N}])/giu;
/** A quick look before the slow one. */
const HINT_OF_PROMISE =
  /safe|free|health|nutrit|wholesome|allergen|superfood|detox|guilt|immune|good for you|doctor/iu;
/** What "free" may follow without promising anything. */
const OTHER_FREE =
  /^(?:for|a|the|is|are|was|were|be|it|of|feel|set|with|hands|care|stress|screen|mess|fuss|tear)[- ]free$/iu;

/** Nothing says "safe", "free from" or "healthy"; a food's own name is left alone. */
export function checkClaims(lines: Lines, { foods }: GuardGround): Check {
  const findings = findIn(
    lines,
    "claims",
    ({ text }) => {
      if (!HINT_OF_PROMISE.test(text)) return [];
      const hits = spansOf(text, PROMISES);
      const names = foods.flatMap((food) => wordSpans(text, food));
      return hits.filter(
        ([from, to]) =>
          !OTHER_FREE.test(text.slice(from, to)) &&
          !names.some(([start, end]) => start <= from && to <= end),
      );
    },
    (words, place) => ({
      text: `“${words}”: nothing we write says “safe”, “free from” or “healthy”.`,
      fixes: [strike(place)],
    }),
  );
  return {
    ...{ kind: "claims", level: "stop", title: "No promise of safety or health", findings },
    passed: "No “safe”, “free from”, “healthy” or the like.",
  };
}

const NUMBER =
  /(?<![\p{L}\p{N}])(?:\d+|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|half)(?![\p{L}\p{N}])/giu;
const CALENDAR =
  /(?<![\p{L}])(?:Monday|Tuesday|Wednesday|Thursday|Friday|Saturday|Sunday)(?:s|’s)?(?![\p{L}])/gu;
const ALWAYS =
  /(?<![\p{L}])(?:never|always|first time|everyone|nobody|every child|both)(?![\p{L}])/giu;

/** A sentence without a record that states a number, a day, a name, a food or an "always". */
export function checkRecords(lines: Lines, ground: GuardGround): Check {
  const { foods, children, kind, owed } = ground;
  const search = ({ text, facts }: OwnSentence): Span[] => {
    if (facts.length > 0 || isStageWord(text) || owed.includes(text)) return [];
    const hits = [
      ...children.flatMap(({ onScreenName }) => wordSpans(text, onScreenName)),
      ...foods.flatMap((food) => wordSpans(text, food)),
      ...[NUMBER, CALENDAR, ALWAYS].flatMap((pattern) => spansOf(text, pattern)),
    ].sort(([one], [other]) => one - other);
    return hits.slice(0, 1);
  };
  return {
    ...{ kind: "records", level: "look", title: "Every claim has a record" },
    passed: "Each name, number, day and food stands on a record.",
    findings: PRIVATE_KINDS.has(kind)
      ? []
      : findIn(lines, "records", search, (words, place) => ({
          text: `“${words}” is told, and no record stands behind the sentence.`,
          fixes: [strike(place)],
        })),
  };
}

/** Headings and picture cues of an outline are not told to anyone. */
function isStageWord(text: string): boolean {
  return /^(?:#|Picture:|Hold:)/u.test(text);
}

/** What was scrapped is not told as eaten: it may stand only in a sentence that rests on the swap. */
export function checkScrapped(lines: Lines, { scrapped }: GuardGround): Check {
  const findings = findIn(
    lines,
    "scrapped",
    ({ text, facts }) =>
      facts.some((id) => /^(?:swap|return|first|quote):/u.test(id))
        ? []
        : scrapped.flatMap((food) => wordSpans(text, food)),
    (words, place) => ({
      text: `“${words}” stayed out this week; say so, or leave it out.`,
      fixes: [strike(place)],
    }),
  );
  return {
    ...{ kind: "scrapped", level: "look", title: "Planned is not packed", findings },
    passed: "Scrapped items are not told as eaten.",
  };
}

/** Where a word or name stands in a text as a whole word, whatever its case. */
function wordSpans(text: string, word: string): Span[] {
  if (word.trim() === "" || !folded(text).plain.includes(folded(word).plain)) return [];
  return spansOf(
    text,
    new RegExp(`(?<![\\p{L}\\p{N}])${literal(word)}(?:s|es)?(?![\\p{L}\\p{N}])`, "giu"),
  );
}
