import { syllable } from "syllable";

/** What the reading formulas count. */
export type TextCounts = {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
};

const SENTENCES = new Intl.Segmenter("en", { granularity: "sentence" });

/**
 * Words, sentences and syllables, by the counting rules of Flesch’s method: contractions, hyphenated
 * words and numbers are one word, a numeral is one syllable.
 */
export function countText(text: string): TextCounts {
  const words = text.match(/[\p{L}\p{N}]+(?:[’'\-‑][\p{L}\p{N}]+)*/gu) ?? [];
  const sentences = text
    .split("\n")
    .flatMap((line) => [...SENTENCES.segment(line)])
    .filter(({ segment }) => /[\p{L}\p{N}]/u.test(segment)).length;
  const syllables = words.reduce(
    (sum, word) => sum + (/^\p{N}+$/u.test(word) ? 1 : Math.max(1, syllable(word))),
    0,
  );
  return { words: words.length, sentences, syllables };
}

/** Flesch Reading Ease, higher is easier (Flesch 1948). Undefined for a text without words. */
export function readingEase({ words, sentences, syllables }: TextCounts): number | undefined {
  if (words === 0 || sentences === 0) return undefined;
  return 206.835 - 1.015 * (words / sentences) - 84.6 * (syllables / words);
}

/** Flesch–Kincaid grade (Kincaid, Fishburne, Rogers & Chissom 1975). Undefined for a text without words. */
export function readingGrade({ words, sentences, syllables }: TextCounts): number | undefined {
  if (words === 0 || sentences === 0) return undefined;
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}
