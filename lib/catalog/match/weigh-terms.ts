import type { Term } from "./terms.ts";
import { LIGHT, OTHER_FOODS, SHADES, SOFT_MAKES, STATES, STRONG_MAKES } from "./word-roles.ts";

/** Weight of a word against a full word's 1, by its role. Tuned on the tuning half of the test set. */
const ROLE_WEIGHTS = { light: 0.1, shade: 0.35, state: 0.6, aside: 0.15, later: 0.45 } as const;

/** How many foods know each word; rare words tell more. */
export type WordCounts = { readonly foods: number; readonly byStem: ReadonlyMap<string, number> };

/**
 * How much a word tells: inverse document frequency (K. Spärck Jones 1972), with a floor of 400 foods
 * so that a short list behaves like a long one, times the weight of its role.
 */
export function weightOf(term: Pick<Term, "word" | "stem">, counts: WordCounts): number {
  return rarity(term.stem, counts) * roleWeight(term.word);
}

/**
 * Weight of a word in what the user typed: asides and later clauses tell less. `reach` is the last
 * clause that says what the food is.
 */
export function askedWeightOf(term: Term, reach: number, counts: WordCounts): number {
  const weight = weightOf(term, counts);
  if (term.isAside) return weight * ROLE_WEIGHTS.aside;
  const isUnknown = !counts.byStem.has(term.stem);
  if (term.isHead || term.clause === 0) return isUnknown && !term.isHead ? weight * 0.5 : weight;
  if (isUnknown) return weight * (term.clause <= reach ? 0.5 : 0.2);
  return term.clause === 1 ? weight * 0.85 : weight * ROLE_WEIGHTS.later;
}

/** True for a word that only breaks ties. */
export function isLight(word: string): boolean {
  return LIGHT.has(word);
}

/** True for a word that, where the food lacks it, means another food. */
export function isVeto(term: Term): boolean {
  if (term.isAside) return false;
  if (STRONG_MAKES.has(term.word) || OTHER_FOODS.has(term.word)) return true;
  return SOFT_MAKES.has(term.word) && term.isHead;
}

function rarity(stem: string, counts: WordCounts): number {
  const foods = Math.max(400, counts.foods);
  return Math.log(1 + foods / ((counts.byStem.get(stem) ?? 0) + 1));
}

function roleWeight(word: string): number {
  if (LIGHT.has(word)) return ROLE_WEIGHTS.light;
  if (STATES.has(word)) return ROLE_WEIGHTS.state;
  if (SHADES.has(word)) return ROLE_WEIGHTS.shade;
  return 1;
}
