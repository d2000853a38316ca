import pluralize from "pluralize";
import { measureOf } from "./measures.ts";

/** Sizes that stand before a counted unit; "regular" and "medium" are what FNDDS takes when none is given. */
const SIZES = new Set(
  "mini miniature small medium regular large extra thin thick standard average usual jumbo or very".split(
    " ",
  ),
);
const USUAL_SIZES = ["regular", "medium", "standard"];
/** Cuts whose cup weighs what a plain cup does; a mashed, grated or ground one does not. Common practice, no source. */
const CUTS_LIKE_PLAIN = new Set(
  `chopped diced sliced slice cube cubed piece chunk half section whole kernel floret inch strip
  without pit pitted or and raw fresh 1 2`.split(/\s+/),
);

/** The weights a food knows, by unit; keys may hold alternatives ("section/slice") and states ("cup, shredded"). */
export type UnitWeights = Readonly<Record<string, number>>;

/**
 * Grams of one counted unit, or undefined: the key of the same words in any order ("pita, large" finds
 * "large pita"), one alternative of a key, or the usual size of it ("slice" finds "medium slice"). A remark after a
 * comma is passed over unless it gives a size ("half, with liquid").
 */
export function weightOfCounted(weights: UnitWeights, unit: string): number | undefined {
  const [head = "", ...remarks] = unit.split(",");
  const isSized = wordsOf(remarks.join(" ")).some((word) => SIZES.has(word));
  return (
    weightOfWords(weights, wordsOf(unit)) ??
    (isSized ? undefined : weightOfWords(weights, wordsOf(head)))
  );
}

function weightOfWords(weights: UnitWeights, asked: readonly string[]): number | undefined {
  const keys = Object.entries(weights).flatMap(([key, grams]) =>
    alternativesOf(key).map((words) => ({ words, grams })),
  );
  const exact = keys.filter(({ words }) => isSameBag(words, asked));
  if (exact[0])
    return exact.every(({ grams }) => grams === exact[0]?.grams) ? exact[0].grams : undefined;
  if (asked.length !== 1 || SIZES.has(asked[0] ?? "")) return undefined;
  const sized = keys.filter(
    ({ words }) => words.at(-1) === asked[0] && words.slice(0, -1).every((word) => SIZES.has(word)),
  );
  const usual = sized.find(({ words }) => words.some((word) => USUAL_SIZES.includes(word)));
  return usual?.grams;
}

/** A volume with a state: "cup, shredded", "cups chopped". Undefined when the unit is no such thing. */
export function measureAndState(
  unit: string,
): { measure: string; state: readonly string[] } | undefined {
  const found = /^(fl oz|[a-z]+)s?[, ]+(.+)$/i.exec(unit.trim());
  const measure = found ? measureOf(found[1] ?? "") : undefined;
  if (measure?.kind !== "volume" || !found) return undefined;
  return { measure: measure.name, state: wordsOf(found[2] ?? "") };
}

/** True when a cup of the food in this state may be taken to weigh what a plain cup does. */
export function isLikePlain(state: readonly string[]): boolean {
  return state.every((word) => CUTS_LIKE_PLAIN.has(word));
}

/**
 * Grams of a plain measure, from keys that name a state of it: the one of unspecified form, the only
 * one, or the cooked one. Yields of a dry amount ("cup, dry, yields") are never taken.
 */
export function weightOfPlain(weights: UnitWeights, measure: string): number | undefined {
  const keyed = Object.entries(weights)
    .map(([key, grams]) => ({ found: measureAndState(key), key, grams }))
    .filter(({ found, key }) => found?.measure === measure && !/yields?/.test(key));
  const unspecified = keyed.find(({ key }) => /\bNFS\b/.test(key));
  const cooked = keyed.filter(({ key }) => /\bcooked$/.test(key));
  const only = keyed.length === 1 ? keyed[0] : undefined;
  return (unspecified ?? only ?? (cooked.length === 1 ? cooked[0] : undefined))?.grams;
}

function alternativesOf(key: string): (readonly string[])[] {
  const [head = "", ...others] = key.split("/");
  return [head, ...others].map(wordsOf);
}

const wordsKept = new Map<string, readonly string[]>();
/** So many texts are remembered: the same few units are asked for with every item, and singulars are slow. */
const WORDS_MOST = 5_000;

function wordsOf(text: string): readonly string[] {
  const kept = wordsKept.get(text);
  if (kept) return kept;
  const found =
    text
      .toLowerCase()
      .replaceAll(/\([^)]*\)/g, " ")
      .match(/[\p{L}\d.-]+/gu) ?? [];
  const words = found.map((word) => pluralize.singular(word));
  if (wordsKept.size >= WORDS_MOST) wordsKept.clear();
  wordsKept.set(text, words);
  return words;
}

function isSameBag(left: readonly string[], right: readonly string[]): boolean {
  return left.length === right.length && [...left].sort().join(" ") === [...right].sort().join(" ");
}
