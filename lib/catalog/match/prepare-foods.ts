import { kindsOf, kindWords } from "./kinds.ts";
import { synonymWords } from "./synonyms.ts";
import { singularOf, stemOf, termsOf, type Term } from "./terms.ts";
import { isLight, weightOf, type WordCounts } from "./weigh-terms.ts";
import { ROLE_WORDS } from "./word-roles.ts";

/** As much of a food as matching needs; any `Food` will do, and so will a catalogue row. */
export type NamedFood = { readonly name: string; readonly aliases?: readonly string[] };

/** One name of a food, taken apart once. */
export type Variant = {
  readonly text: string;
  readonly isAlias: boolean;
  readonly terms: readonly Term[];
  /** Its words as written, small letters, for answering half-typed ones. */
  readonly words: readonly string[];
  /** Stems of its words and, by weight, how much each must be found again. */
  readonly weights: ReadonlyMap<string, number>;
  readonly total: number;
  /** Stem of what the name is about, its last telling word; undefined where its kind says it anyway. */
  readonly head: string | undefined;
};

export type PreparedFood<F extends NamedFood> = {
  readonly food: F;
  readonly variants: readonly Variant[];
  /** Stems of every name of the food, and of the classes it belongs to. */
  readonly known: ReadonlySet<string>;
};

/** Foods indexed by the words of their names. */
export type PreparedFoods<F extends NamedFood> = {
  readonly foods: readonly PreparedFood<F>[];
  readonly counts: WordCounts;
  readonly byStem: ReadonlyMap<string, readonly PreparedFood<F>[]>;
  /** Words the foods are named by, in the singular: what a misspelling may mean. */
  readonly vocabulary: ReadonlySet<string>;
  readonly byText: ReadonlyMap<string, PreparedFood<F>>;
};

const KNOWN_WORDS = new Set([...synonymWords(), ...ROLE_WORDS, ...kindWords()]);
/** Other forms of known words are no misspellings either: "buttered", "stemmed". */
const KNOWN_STEMS = new Set([...KNOWN_WORDS].map(stemOf));
const prepared = new WeakMap<object, PreparedFoods<NamedFood>>();

/** Indexes foods by their names and aliases. Kept for as long as the array it was handed lives. */
export function prepareFoods<F extends NamedFood>(foods: readonly F[]): PreparedFoods<F> {
  const kept = prepared.get(foods);
  // The index of an array holds that array's own foods, so its element type is F again.
  if (kept) return kept as PreparedFoods<F>;
  const built = build(foods);
  prepared.set(foods, built);
  return built;
}

/** True for a word that a food is named by, or that is known to mean something else. */
export function isKnownWord(word: string, { vocabulary }: PreparedFoods<NamedFood>): boolean {
  return vocabulary.has(word) || KNOWN_WORDS.has(word) || KNOWN_STEMS.has(stemOf(word));
}

function build<F extends NamedFood>(foods: readonly F[]): PreparedFoods<F> {
  const named = foods.map((food) => ({ food, names: namesOf(food) }));
  const counts = countWords(named.map(({ names }) => names.flatMap(({ terms }) => terms)));
  const vocabulary = new Set<string>();
  const byStem = new Map<string, PreparedFood<F>[]>();
  const byText = new Map<string, PreparedFood<F>>();
  const all = named.map(({ food, names }) => {
    const variants = names.map((name) => variantOf(name, counts));
    const known = new Set(variants.flatMap(({ terms }) => terms.flatMap(withKinds)));
    const entry = { food, variants, known };
    for (const stem of known) byStem.set(stem, [...(byStem.get(stem) ?? []), entry]);
    return entry;
  });
  for (const entry of all) indexTexts(entry, vocabulary, byText);
  return { foods: all, counts, byStem, vocabulary, byText };
}

type Name = { readonly text: string; readonly isAlias: boolean; readonly terms: readonly Term[] };

function namesOf(food: NamedFood): Name[] {
  const texts = [food.name, ...(food.aliases ?? [])];
  return texts.map((text, index) => ({ text, isAlias: index > 0, terms: termsOf(text, true) }));
}

function variantOf(name: Name, counts: WordCounts): Variant {
  const implied = new Set(name.terms.flatMap(({ word }) => kindsOf(word)));
  const weights = new Map<string, number>();
  for (const term of name.terms) {
    // "cheese" adds little to "cheddar cheese", which nothing but a cheese is called.
    const share = implied.has(term.word) ? 0.2 : 1;
    weights.set(term.stem, weightOf(term, counts) * share);
  }
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
  const head = name.terms.findLast(({ word }) => !isLight(word));
  const isImplied = head !== undefined && implied.has(head.word);
  const words = name.text.toLowerCase().match(/[\p{L}\d%]+/gu) ?? [];
  return { ...name, words, weights, total, head: isImplied ? undefined : head?.stem };
}

function withKinds(term: Term): string[] {
  return [term.stem, ...kindsOf(term.word).map(stemOf)];
}

function countWords(termsByFood: readonly (readonly Term[])[]): WordCounts {
  const byStem = new Map<string, number>();
  for (const terms of termsByFood) {
    for (const stem of new Set(terms.map((term) => term.stem))) {
      byStem.set(stem, (byStem.get(stem) ?? 0) + 1);
    }
  }
  return { foods: termsByFood.length, byStem };
}

function indexTexts<F extends NamedFood>(
  entry: PreparedFood<F>,
  vocabulary: Set<string>,
  byText: Map<string, PreparedFood<F>>,
): void {
  for (const variant of entry.variants) {
    const text = plainText(variant.text);
    const holder = byText.get(text);
    // A food's own name goes before another food's alias.
    if (!holder || (!variant.isAlias && plainText(holder.food.name) !== text)) {
      byText.set(text, entry);
    }
    for (const word of text.split(" ")) {
      if (!isLight(word) && word.length > 2) vocabulary.add(word);
    }
  }
}

/** A name for comparing letter by letter: small letters, single spaces, singular; commas stay. */
export function plainText(text: string): string {
  const words =
    text
      .toLowerCase()
      .normalize("NFKC")
      .match(/[\p{L}\d%]+|,/gu) ?? [];
  return words.map(singularOf).join(" ");
}
