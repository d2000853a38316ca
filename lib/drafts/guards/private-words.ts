const HIDDEN = /[\u00AD\u200B-\u200F\u2060\u2066-\u2069\uFEFF]|\p{M}/gu;

/** From and to, in UTF-16 units of a text. */
export type Span = readonly [from: number, to: number];

/**
 * Where any of the words stands in a text as a whole word (its possessive and plural too), matched
 * without case, accents and hidden characters.
 */
export function privateSpans(text: string, words: readonly string[]): Span[] {
  const { plain, at } = folded(text);
  return words
    .map((word) => folded(word).plain.trim())
    .filter((word) => word !== "")
    .flatMap((word) => spansOf(plain, wholeWord(word)))
    .map(([from, to]) => [at[from] ?? 0, at[to] ?? text.length] as const)
    .sort(([left], [right]) => left - right);
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

/** Text without case, accents and hidden characters, and where each unit of it stood. */
export function folded(text: string): { readonly plain: string; readonly at: readonly number[] } {
  let plain = "";
  const at: number[] = [];
  let offset = 0;
  for (const character of text) {
    const bare = character.normalize("NFKD").replace(HIDDEN, "").toLowerCase();
    for (let unit = 0; unit < bare.length; unit += 1) at.push(offset);
    plain += bare;
    offset += character.length;
  }
  return { plain, at };
}
