import type { DraftKind } from "../template/kinds.ts";
import {
  findIn,
  placed,
  strike,
  type Check,
  type Finding,
  type GuardGround,
  type OwnSentence,
} from "./check.ts";
import { spansOf } from "./private-words.ts";

type Lines = readonly (readonly OwnSentence[])[];

const MEASURED: ReadonlySet<DraftKind> = new Set([
  "description",
  "pinned",
  "lunch-post",
  "recap",
  "found",
  "teaser",
]);

/** Lengths of the user's channel: titles each, texts as a whole, in letters as a reader counts them. */
export function checkLengths(lines: Lines, { kind, limits }: GuardGround): Check {
  const { titleMax, descriptionMax } = limits;
  const text = lines.map((line) => line.map((one) => one.text).join(" ")).join("\n");
  const passed =
    kind === "titles"
      ? `Every title is within ${titleMax} letters.`
      : MEASURED.has(kind)
        ? `${lettersOf(text)} of ${descriptionMax} letters.`
        : "No limit for this one.";
  return {
    ...{ kind: "lengths", level: "look", title: "Within the channel’s lengths", passed },
    findings:
      kind === "titles"
        ? longTitles(lines, titleMax)
        : MEASURED.has(kind) && lettersOf(text) > descriptionMax
          ? [tooLong(lines, lettersOf(text), descriptionMax)]
          : [],
  };
}

const GRAPHEMES = new Intl.Segmenter("en", { granularity: "grapheme" });

/** Letters as a reader sees them: an emoji or an accented letter is one. */
function lettersOf(text: string): number {
  if (!/[\p{M}\p{Cs}\p{Cf}\p{Emoji_Modifier}]|[^\u0000-\uFFFF]/u.test(text)) return text.length;
  return [...GRAPHEMES.segment(text)].length;
}

function longTitles(lines: Lines, most: number): Finding[] {
  return lines.flatMap((line, index) => {
    const text = line.map((one) => one.text).join(" ");
    const letters = lettersOf(text);
    if (letters <= most) return [];
    return [
      {
        key: `lengths: ${text}`,
        text: `“${text}” has ${letters} letters, ${letters - most} too many.`,
        ...{ place: { line: index, at: 0 }, span: null },
        fixes: line.map((_, at) => strike({ line: index, at })).slice(-1),
      },
    ];
  });
}

function tooLong(lines: Lines, letters: number, most: number): Finding {
  const last = placed(lines).at(-1);
  return {
    key: `lengths: ${letters}`,
    text: `It has ${letters} letters, ${letters - most} too many.`,
    ...{ place: last?.place ?? null, span: null },
    fixes: last ? [{ ...strike(last.place), label: "Strike the last sentence" }] : [],
  };
}

const LINK_PROMISE =
  /(?<![\p{L}])links? (?:is |are )?(?:right )?(?:below|under|in the description)(?![\p{L}])/giu;

/** "The link is below" needs a link below. */
export function checkLinks(lines: Lines): Check {
  const hasLink = lines.flat().some(({ text }) => /https?:\/\/\S/u.test(text));
  return {
    ...{ kind: "links", level: "look", title: "A link where one is promised" },
    passed: hasLink ? "The text holds a link." : "No link is promised.",
    findings: hasLink
      ? []
      : findIn(
          lines,
          "links",
          ({ text }) => (/link/iu.test(text) ? spansOf(text, LINK_PROMISE) : []),
          (words, place) => ({
            text: `“${words}”, and there is none.`,
            fixes: [strike(place)],
          }),
        ),
  };
}
