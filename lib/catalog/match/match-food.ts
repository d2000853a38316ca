import { readQuantity } from "../quantity/read-quantity.ts";
import { openBrackets } from "./clauses.ts";
import {
  isKnownWord,
  plainText,
  prepareFoods,
  type NamedFood,
  type PreparedFood,
  type PreparedFoods,
} from "./prepare-foods.ts";
import { scoreFood } from "./score-food.ts";
import { menderOf } from "./spelling.ts";
import { termsOf, type Term } from "./terms.ts";

/** Why a food was matched. */
export type MatchReason =
  | { readonly kind: "name" }
  | { readonly kind: "alias"; readonly alias: string }
  | { readonly kind: "words"; readonly matched: string }
  | { readonly kind: "spelling"; readonly matched: string };

/** A food, how sure the match is in [0, 1], and why. */
export type RankedFood<F extends NamedFood> = {
  readonly food: F;
  readonly score: number;
  readonly reason: MatchReason;
};

/** What a phrase may mean. */
export type FoodMatch<F extends NamedFood> = {
  /** The food meant, or null when no food of the list is. */
  readonly best: RankedFood<F> | null;
  /** Foods that are sure enough, best first: empty exactly when `best` is null. */
  readonly ranked: readonly RankedFood<F>[];
  /** Near misses to ask about, best first; never to be taken unasked. */
  readonly doubtful: readonly RankedFood<F>[];
};

/** From here a match is taken, below it asked about. Tuned on the tuning half of the test set. */
export const SURE_SCORE = 0.62;
const ASK_SCORE = 0.4;
/** A description with commas is rather meant turned round than as it stands. */
const FORWARD_FACTOR = 0.97;
const RANKED_MOST = 8;

/**
 * Which of `foods` a typed phrase means: `matchFood("2 slices of wholemeal bread", foods)`.
 * Foods need a `name` and may have `aliases` (strings); anything else they carry comes back with them.
 * An amount at the start is skipped. The answer's `best` is the food or null for "none of these", and
 * `ranked` the foods sure enough, best first, each `{ food, score, reason }`. The index over `foods`
 * is built once per array. Never throws, whatever the string.
 */
export function matchFood<F extends NamedFood>(query: string, foods: readonly F[]): FoodMatch<F> {
  const index = prepareFoods(foods);
  const named = index.byText.get(plainText(query));
  if (named) return answer([{ food: named.food, score: 1, reason: exactReason(named, query) }]);
  const phrase = readQuantity(query).rest;
  const ranked = rank(phrase, index);
  if (!phrase.includes("(") || ranked.some(({ score }) => score >= SURE_SCORE))
    return answer(ranked);
  // What stands in brackets may name it: "Grapes (raisins), dried".
  const opened = rank(openBrackets(phrase), index);
  return answer(opened.some(({ score }) => score >= SURE_SCORE) ? opened : ranked);
}

function answer<F extends NamedFood>(all: readonly RankedFood<F>[]): FoodMatch<F> {
  const ranked = all.filter(({ score }) => score >= SURE_SCORE).slice(0, RANKED_MOST);
  const doubtful = all.filter(({ score }) => score >= ASK_SCORE && score < SURE_SCORE);
  return { best: ranked[0] ?? null, ranked, doubtful: doubtful.slice(0, RANKED_MOST) };
}

function exactReason(entry: PreparedFood<NamedFood>, query: string): MatchReason {
  const text = plainText(query);
  const variant = entry.variants.find((candidate) => plainText(candidate.text) === text);
  return variant?.isAlias ? { kind: "alias", alias: variant.text } : { kind: "name" };
}

/** All foods that share a word with the phrase, read as written and turned round at its commas. */
function rank<F extends NamedFood>(phrase: string, index: PreparedFoods<F>): RankedFood<F>[] {
  const hasCommas = phrase.includes(",");
  const lexicon = {
    vocabulary: index.vocabulary,
    isKnown: (word: string) => isKnownWord(word, index),
  };
  const best = new Map<PreparedFood<F>, RankedFood<F>>();
  for (const turned of hasCommas ? [true, false] : [false]) {
    const { mend, likeness } = menderOf(lexicon);
    const terms = termsOf(phrase, turned, mend);
    for (const entry of candidates(terms, index)) {
      const fit = scoreFood(terms, entry, index.counts);
      const score = (fit?.score ?? 0) * likeness() * (turned || !hasCommas ? 1 : FORWARD_FACTOR);
      if (!fit || score <= (best.get(entry)?.score ?? 0)) continue;
      const kind = likeness() < 1 ? "spelling" : "words";
      best.set(entry, {
        food: entry.food,
        score,
        reason: { kind, matched: fit.variant.text },
      });
    }
  }
  return [...best.values()]
    .filter(({ score }) => score >= ASK_SCORE)
    .sort((left, right) => right.score - left.score);
}

function candidates<F extends NamedFood>(
  terms: readonly Term[],
  index: PreparedFoods<F>,
): Set<PreparedFood<F>> {
  return new Set(terms.flatMap(({ stem }) => index.byStem.get(stem) ?? []));
}
