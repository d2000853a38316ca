import { isKind, kindsOf } from "./kinds.ts";
import type { NamedFood, PreparedFood, Variant } from "./prepare-foods.ts";
import { stemOf, type Term } from "./terms.ts";
import { askedWeightOf, isLight, isVeto, type WordCounts } from "./weigh-terms.ts";
import { DRY_BY_NATURE, LEAFY, SHADES, STATES, STRONG_MAKES } from "./word-roles.ts";

/** Share of a word's weight that another name of the same food, or its class, makes good. */
const KNOWN_SHARE = 0.9;
const STATE_PENALTY = 0.55;
const HEAD_PENALTY = 0.7;
const ALIAS_FACTOR = 0.995;
/** Share answered by kin: "spaghetti" by a "whole grain pasta". */
const KIN_SHARE = 0.5;
/** For each telling word up front that other foods have and this one lacks: "cheese", in a sauce. */
const ELSEWHERE_PENALTY = 0.8;

/** How well a food's best-fitting name answers what was asked. */
export type Fit = { readonly score: number; readonly variant: Variant };

/**
 * The best of a food's names by the harmonic mean of precision (share of the asked words, by weight,
 * that the food answers) and recall (share of the name's words that were asked for): van Rijsbergen
 * 1979, "Information Retrieval", ch. 7. Undefined when a word that makes another food is unanswered.
 */
export function scoreFood(
  asked: readonly Term[],
  entry: PreparedFood<NamedFood>,
  counts: WordCounts,
): Fit | undefined {
  if (asked.some((term) => isVeto(term) && !isAnswered(term, entry))) return undefined;
  const head = asked.find((term) => term.isHead);
  const headFactor = head && !isLight(head.word) && !isAnswered(head, entry) ? HEAD_PENALTY : 1;
  let best: Fit | undefined;
  for (const variant of entry.variants) {
    const score = headFactor * stateFactor(asked, variant) * overlap(asked, variant, entry, counts);
    // Of two foods that fit alike, the one so named goes before the one so nicknamed.
    const preferred = score * (variant.isAlias ? ALIAS_FACTOR : 1);
    if (preferred > (best?.score ?? 0)) best = { score: preferred, variant };
  }
  return best;
}

function overlap(
  asked: readonly Term[],
  variant: Variant,
  entry: PreparedFood<NamedFood>,
  counts: WordCounts,
): number {
  let total = 0;
  let answered = 0;
  let penalty = 1;
  const head = asked.find((term) => term.isHead)?.word ?? "";
  // After a class word it is the next clause that says which: "Soup, cream of mushroom".
  const reach = isKind(head) || STRONG_MAKES.has(head) ? 1 : 0;
  const stems = new Set<string>();
  const implied = new Set<string>();
  for (const term of asked) {
    if (stems.has(term.stem)) continue;
    stems.add(term.stem);
    const weight = askedWeightOf(term, counts);
    total += weight;
    const kinds = term.isHead ? kindsOf(term.word).map(stemOf) : [];
    for (const kind of kinds) implied.add(kind);
    if (variant.weights.has(term.stem)) answered += weight;
    else if (entry.known.has(term.stem)) answered += weight * KNOWN_SHARE;
    else if (kinds.some((kind) => variant.weights.has(kind))) answered += weight * KIN_SHARE;
    else if (isElsewhere(term, reach, counts)) penalty *= ELSEWHERE_PENALTY;
  }
  if (total === 0 || variant.total === 0) return 0;
  let found = 0;
  for (const [stem, weight] of variant.weights) {
    if (stems.has(stem)) found += weight;
    else if (implied.has(stem)) found += weight * KNOWN_SHARE;
  }
  const precision = answered / total;
  const recall = found / variant.total;
  if (precision + recall === 0) return 0;
  return (penalty * 2 * precision * recall) / (precision + recall);
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

/** A dried or smoked food is another food, unless the name says so or it is dry by nature. */
function stateFactor(asked: readonly Term[], variant: Variant): number {
  const isDry = variant.terms.some(({ word }) => DRY_BY_NATURE.has(word));
  const missing = asked.filter(
    ({ word, stem, isAside }) =>
      !isAside && STATES.has(word) && !variant.weights.has(stem) && !(isDry && word === "dried"),
  );
  return STATE_PENALTY ** missing.length;
}
