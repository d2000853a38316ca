import { mediumDay } from "#lib/calendar/index.ts";
import { findIn, strike, type Check, type GuardGround, type OwnSentence } from "./check.ts";
import { folded, literal, spansOf, type Span } from "./private-words.ts";

/** Words that tell nothing of a surprise: small ones, and those of every lunch. */
const TELLS_NOTHING = new Set(
  "a an and as at by each for from in inside is it its made of off on one only or out set so that the their them this to two under up very was will with wrapped tin tins lid lunch lunches box note hidden".split(
    " ",
  ),
);

/** The words a surprise would be known by. */
function surpriseWords(surprise: string): string[] {
  const words = folded(surprise).plain.match(/[\p{L}\p{N}]+/gu) ?? [];
  return [...new Set(words.filter((word) => word.length > 2 && !TELLS_NOTHING.has(word)))];
}

/**
 * The surprise is kept until the day of its reveal: no sentence may hold two of its telling words, or
 * the only one.
 */
export function checkSurprise(
  lines: readonly (readonly OwnSentence[])[],
  { surprise, revealOn, today, hidden = [] }: GuardGround,
): Check {
  const [first = { surprise, revealOn }, ...others] =
    surprise === "" ? hidden : [{ surprise, revealOn }, ...hidden];
  const check = checkOne(lines, { ...first, today });
  const more = others.flatMap((one) => checkOne(lines, { ...one, today }).findings);
  return { ...check, findings: [...check.findings, ...more] };
}

function checkOne(
  lines: readonly (readonly OwnSentence[])[],
  { surprise, revealOn, today }: Pick<GuardGround, "surprise" | "revealOn" | "today">,
): Check {
  const words = surpriseWords(surprise);
  const isOpen = words.length === 0 || (revealOn !== null && revealOn <= today);
  const search = ({ text }: OwnSentence): Span[] => {
    const { plain, at } = folded(text);
    if (!words.some((word) => plain.includes(word))) return [];
    const hits = words.flatMap((word) =>
      spansOf(
        plain,
        new RegExp(`(?<![\\p{L}\\p{N}])${literal(word)}(?:s|es)?(?![\\p{L}\\p{N}])`, "gu"),
      ).slice(0, 1),
    );
    if (hits.length < Math.min(2, words.length)) return [];
    const from = Math.min(...hits.map(([start]) => start));
    const to = Math.max(...hits.map(([, end]) => end));
    return [[at[from] ?? 0, at[to] ?? text.length]];
  };
  const until = revealOn === null ? "no reveal date is set" : `held until ${mediumDay(revealOn)}`;
  return {
    ...{ kind: "surprise", level: "stop", title: "Surprise kept" },
    passed: isOpen
      ? words.length === 0
        ? "This episode has no surprise."
        : "It has been revealed: it may be told."
      : `Its ${words.length === 1 ? "word" : `${words.length} words`} looked for, none found; ${until}.`,
    findings: isOpen
      ? []
      : findIn(lines, "surprise", search, (found, place) => ({
          text: `“${found}” gives the surprise away; ${until}.`,
          fixes: [strike(place)],
        })),
  };
}
