import { distance } from "fastest-levenshtein";
import { singularOf, type Mend } from "./terms.ts";

/** Which words are known: those foods are named by, and those that mean something else. */
export type Lexicon = {
  readonly vocabulary: ReadonlySet<string>;
  readonly isKnown: (word: string) => boolean;
};

/**
 * A mender of words nobody knows: a slip of spelling is read as the nearest word the foods are named
 * by, and two words written as one are parted ("tunafish"). Words known to mean something else are
 * never bent: "leek" is no misspelt "leaf". `likeness()` is the least likeness met so far, in [0, 1].
 */
export function menderOf(lexicon: Lexicon): {
  readonly mend: Mend;
  readonly likeness: () => number;
} {
  let least = 1;
  const mend: Mend = (word) => {
    if (word.length < 4 || /\d/.test(word) || lexicon.isKnown(word)) return [word];
    const parted = partWords(word, lexicon);
    if (parted) return parted;
    const near = nearestWord(word, lexicon.vocabulary);
    if (!near) return [word];
    least = Math.min(least, near.likeness);
    return [near.word];
  };
  return { mend, likeness: () => least };
}

function nearestWord(
  typed: string,
  vocabulary: ReadonlySet<string>,
): { readonly word: string; readonly likeness: number } | undefined {
  let best: { word: string; slips: number } | undefined;
  for (const word of vocabulary) {
    if (Math.abs(word.length - typed.length) > 2) continue;
    const slips = slipsBetween(typed, word);
    if (slips > slipsAllowed(typed, word)) continue;
    if (!best || slips < best.slips) best = { word, slips };
  }
  if (!best) return undefined;
  const longest = Math.max(best.word.length, typed.length);
  return { word: best.word, likeness: 1 - best.slips / longest };
}

/** A swap of neighbouring letters is one slip (F. Damerau 1964). */
function slipsBetween(left: string, right: string): number {
  const slips = distance(left, right);
  if (slips !== 2 || left.length !== right.length) return slips;
  const at = [...left].findIndex((letter, index) => letter !== right[index]);
  const swapped = left.slice(0, at) + (left[at + 1] ?? "") + (left[at] ?? "") + left.slice(at + 2);
  return swapped === right ? 1 : slips;
}

/** Short words allow no more than one slip, and never in their first letter. */
function slipsAllowed(typed: string, word: string): number {
  const longest = Math.max(typed.length, word.length);
  if (longest <= 6) return typed[0] === word[0] && typed.length > 3 ? 1 : 0;
  if (longest <= 8) return typed[0] === word[0] ? 2 : 1;
  return 2;
}

function partWords(word: string, { vocabulary, isKnown }: Lexicon): string[] | undefined {
  for (let at = 3; at <= word.length - 3; at += 1) {
    const first = singularOf(word.slice(0, at));
    const second = singularOf(word.slice(at));
    if (vocabulary.has(first) && isKnown(second)) return [first, second];
  }
  return undefined;
}
