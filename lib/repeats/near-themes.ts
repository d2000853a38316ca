import { stemmer } from "stemmer";

/** What of a theme is compared. */
export type NamedTheme = {
  readonly id: string;
  readonly name: string;
  readonly motifs: readonly string[];
};

/** A theme close to another, with what they share. */
export type NearTheme = {
  readonly theme: NamedTheme;
  /** In (0, 1]. */
  readonly nearness: number;
  readonly sharedMotifs: readonly string[];
  readonly sharedWords: readonly string[];
};

/** From here two themes are flagged as near. Common practice, no source. */
const NEAR_FROM = 0.25;
const EMPTY_WORDS = new Set(
  "a an and at for from in into my of on or our the to with week day".split(" "),
);

/**
 * Themes near to one, nearest first, by shared motifs and by shared word stems of their names: each a
 * Jaccard similarity (P. Jaccard 1901), the larger of the two counting, plus a tenth of the smaller.
 */
export function nearThemes(theme: NamedTheme, others: readonly NamedTheme[]): NearTheme[] {
  const motifs = new Set(theme.motifs);
  const words = wordStems(theme.name);
  return others
    .filter((other) => other.id !== theme.id)
    .map((other) => {
      const otherMotifs = new Set(other.motifs);
      const otherWords = wordStems(other.name);
      const byMotif = jaccard(motifs, otherMotifs);
      const byWord = jaccard(new Set(words.keys()), new Set(otherWords.keys()));
      const nearness = Math.min(1, Math.max(byMotif, byWord) + Math.min(byMotif, byWord) / 10);
      return {
        theme: other,
        nearness,
        sharedMotifs: [...otherMotifs].filter((motif) => motifs.has(motif)),
        sharedWords: [...otherWords].filter(([stem]) => words.has(stem)).map(([, word]) => word),
      };
    })
    .filter(({ nearness }) => nearness >= NEAR_FROM)
    .sort((left, right) => right.nearness - left.nearness);
}

function wordStems(name: string): Map<string, string> {
  const words =
    name
      .toLowerCase()
      .normalize("NFKC")
      .match(/[\p{L}\d]+/gu) ?? [];
  const telling = words.filter((word) => !EMPTY_WORDS.has(word));
  return new Map(telling.map((word) => [stemmer(word), word]));
}

function jaccard(left: ReadonlySet<string>, right: ReadonlySet<string>): number {
  const shared = [...left].filter((entry) => right.has(entry)).length;
  const all = left.size + right.size - shared;
  return all === 0 ? 0 : shared / all;
}
