import { isKind, kindsOf } from "./kinds.ts";
import type { NamedFood, PreparedFood, Variant } from "./prepare-foods.ts";
import { stemOf, type Term } from "./terms.ts";
import { askedWeightOf, isLight, isVeto, type WordCounts } from "./weigh-terms.ts";
import { LEAFY, SHADES, SOFT_MAKES, STATES, STATES_BY_NATURE, STRONG_MAKES } from "./word-roles.ts";

/** Share of a word's weight that another name of the same food, or its class, makes good. */
const KNOWN_SHARE = 0.9;
/** Share answered by kin: "spaghetti" by a "whole grain pasta". */
const KIN_SHARE = 0.5;
/** Factors on the score; all tuned on the tuning half of the test set. */
const FACTORS = {
  /** An alias answers a little less than a name. */
  alias: 0.995,
  /** What the phrase is about is not in the food's names. */
  headMissing: 0.7,
  /** What the name is about was not asked for: "cherry" of "cherry tomatoes". */
  nameHeadMissing: 0.8,
  /** A telling word up front that other foods have and this one lacks: "cheese", in a sauce. */
  elsewhere: 0.8,
  /** A state that the food is not in: dried, smoked. */
  stateMissing: 0.55,
  /** Asked for raw, and the food is not. */
  notRaw: 0.7,
  /** Nothing but its class was asked for: "sauce", of a red sauce. */
  oneOfMany: 0.7,
} as const;

/** How well a food's best-fitting name answers what was asked. */
export type Fit = { readonly score: number; readonly variant: Variant };

/**
 * The best of a food's names by the harmonic mean of precision (share of the asked words, by weight,
 * that the food answers) and recall (share of the name's words that were asked for): van Rijsbergen
 * 1979, "Information Retrieval", ch. 7; lowered by `FACTORS`. Undefined when a word that makes
 * another food is unanswered.
 */
export function scoreFood(
  asked: readonly Term[],
  entry: PreparedFood<NamedFood>,
  counts: WordCounts,
): Fit | undefined {
  if (asked.some((term) => isVeto(term) && !isAnswered(term, entry))) return undefined;
  const head = asked.find((term) => term.isHead);
  const headFactor =
    head && !isLight(head.word) && !isAnswered(head, entry) ? FACTORS.headMissing : 1;
  let best: Fit | undefined;
  for (const variant of entry.variants) {
    const factor = headFactor * nameFactor(asked, variant) * stateFactor(asked, variant);
    const score = factor * overlap(asked, variant, entry, counts);
    if (score > (best?.score ?? 0)) best = { score, variant };
  }
  return best;
}

function overlap(
  asked: readonly Term[],
  variant: Variant,
  entry: PreparedFood<NamedFood>,
  counts: WordCounts,
): number {
  const reach = reachOf(asked);
  let total = 0;
  let answered = 0;
  let factor = 1;
  const stems = new Set<string>();
  const implied = new Set<string>();
  for (const term of asked) {
    if (stems.has(term.stem)) continue;
    stems.add(term.stem);
    const weight = askedWeightOf(term, reach, counts);
    total += weight;
    const kinds = term.isHead ? kindsOf(term.word).map(stemOf) : [];
    for (const kind of kinds) implied.add(kind);
    if (variant.weights.has(term.stem)) answered += weight;
    else if (isAnswered(term, entry)) answered += weight * KNOWN_SHARE;
    else if (kinds.some((kind) => variant.weights.has(kind))) answered += weight * KIN_SHARE;
    else if (isElsewhere(term, reach, counts)) factor *= FACTORS.elsewhere;
  }
  if (total === 0 || variant.total === 0) return 0;
  let found = 0;
  for (const [stem, weight] of variant.weights) {
    if (stems.has(stem)) found += weight;
    else if (implied.has(stem)) found += weight * KNOWN_SHARE;
  }
  const precision = answered / total;
  const recall = found / variant.total;
  return precision + recall === 0 ? 0 : (factor * 2 * precision * recall) / (precision + recall);
}

/** The last clause that says what it is: after a class word the second does ("Soup, mushroom"). */
function reachOf(asked: readonly Term[]): number {
  const head = asked.find((term) => term.isHead)?.word ?? "";
  return isClass(head) ? 1 : 0;
}

function isClass(word: string): boolean {
  return isKind(word) || STRONG_MAKES.has(word) || SOFT_MAKES.has(word);
}

function isElsewhere(term: Term, reach: number, counts: WordCounts): boolean {
  if (term.isAside || term.clause > reach || isLight(term.word) || SHADES.has(term.word))
    return false;
  return counts.byStem.has(term.stem);
}

function isAnswered(term: Term, entry: PreparedFood<NamedFood>): boolean {
  if (entry.known.has(term.stem)) return true;
  if (term.word !== "leaf") return false;
  return entry.variants.some(({ terms }) => terms.some(({ word }) => LEAFY.has(word)));
}

function nameFactor(asked: readonly Term[], variant: Variant): number {
  const stems = new Set(asked.map(({ stem }) => stem));
  const alias = variant.isAlias ? FACTORS.alias : 1;
  const isHeadAsked =
    variant.head === undefined ||
    stems.has(variant.head) ||
    asked.some(({ word }) =>
      kindsOf(word)
        .map(stemOf)
        .includes(variant.head ?? ""),
    );
  const met = asked.filter(
    ({ word, stem, isAside }) => !isAside && !isLight(word) && variant.weights.has(stem),
  );
  const isClassOnly = met.length > 0 && met.every(({ word }) => isClass(word));
  const isOneOfMany = isClassOnly && variant.terms.some(({ stem }) => !stems.has(stem));
  return (
    alias * (isHeadAsked ? 1 : FACTORS.nameHeadMissing) * (isOneOfMany ? FACTORS.oneOfMany : 1)
  );
}

/** A dried or smoked food is another food, unless the name says so or it is so by nature. */
function stateFactor(asked: readonly Term[], variant: Variant): number {
  const missing = asked.filter(
    ({ word, stem, isAside }) =>
      !isAside &&
      STATES.has(word) &&
      !variant.weights.has(stem) &&
      !variant.terms.some((term) => STATES_BY_NATURE[word]?.has(term.word)),
  );
  const isRaw = asked.some(({ word }) => word === "raw" || word === "fresh");
  const isChanged = variant.terms.some(({ word }) => STATES.has(word));
  return FACTORS.stateMissing ** missing.length * (isRaw && isChanged ? FACTORS.notRaw : 1);
}
