const HIDDEN = /[\u00AD\u200B-\u200F\u2060\u2066-\u2069\uFEFF]|\p{M}/gu;

/** From and to, in UTF-16 units of a text. */
export type Span = readonly [from: number, to: number];

/**
 * Where any of the words stands in a text as a whole word (its possessive and plural too), matched
 * without case, accents and hidden characters.
 */
export function privateSpans(text: string, words: readonly string[]): Span[] {
  const { plain, at } = folded(text);
  const bare = words.map((word) => folded(word).plain.trim());
  // A quick look first: hardly any sentence holds one.
  if (!bare.some((word) => word !== "" && plain.includes(word))) return [];
  return bare
    .filter((word) => word !== "" && plain.includes(word))
    .flatMap((word) => {
      const spans = spansOf(plain, wholeWord(word)).map(
        ([from, to]) => [at[from] ?? 0, at[to] ?? text.length] as const,
      );
      return ALSO_WORDS.has(word) ? spans.filter(([from]) => isLarge(text.charAt(from))) : spans;
    })
    .sort(([left], [right]) => left - right);
}

/**
 * Names that are words of a lunch or of a sentence as well: they count only with a large first letter,
 * so that "we will pack an olive" names nobody.
 */
const ALSO_WORDS = new Set(
  "will mark rose may jack grace art bill rob sue pat drew faith hope joy ivy olive ginger rosemary basil pepper poppy sage violet daisy summer april june dawn eve ray guy dean max miles hunter chase skip frank colby brie cherry clementine plum peach apple honey candy heath reed robin jay wren rusty sandy amber ruby pearl star sky berry coco penny nick gene rich dale glen cliff forest".split(
    " ",
  ),
);

function isLarge(letter: string): boolean {
  return letter !== letter.toLowerCase();
}

/** Every hit of a pattern (with the flag g), as spans. */
export function spansOf(text: string, pattern: RegExp): Span[] {
  return [...text.matchAll(pattern)].map((hit) => [hit.index, hit.index + hit[0].length] as const);
}

/** A text as it is, made safe to look for inside a pattern. */
export function literal(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&");
}

/** Scripts written without spaces between words: a hit inside a run of letters counts. */
const UNSPACED = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u;

function wholeWord(word: string): RegExp {
  if (UNSPACED.test(word)) return new RegExp(literal(word), "gu");
  return new RegExp(`(?<![\\p{L}\\p{N}])${literal(word)}(?![\\p{L}\\p{N}])`, "gu");
}

type Folded = { readonly plain: string; readonly at: readonly number[] };

const foldings = new Map<string, Folded>();
/** So many foldings are kept: every guard asks for the same sentences. */
const FOLDINGS_MOST = 2_000;

/** Text without case, accents and hidden characters, and where each unit of it stood. */
export function folded(text: string): Folded {
  const kept = foldings.get(text);
  if (kept) return kept;
  let plain = "";
  const at: number[] = [];
  let offset = 0;
  for (const character of text) {
    const bare =
      character < "\u0080"
        ? character.toLowerCase()
        : character.normalize("NFKD").replace(HIDDEN, "").toLowerCase();
    for (let unit = 0; unit < bare.length; unit += 1) at.push(offset);
    plain += bare;
    offset += character.length;
  }
  if (foldings.size >= FOLDINGS_MOST) foldings.clear();
  const made = { plain, at };
  foldings.set(text, made);
  return made;
}
