import { matchFood } from "./match-food.ts";
import { prepareFoods, type NamedFood, type PreparedFood } from "./prepare-foods.ts";

const SUGGESTED_MOST = 8;

/**
 * Foods for what has been typed so far, best first, for a search field that answers each keystroke:
 * first those that a whole phrase surely means as spelled, then those with a name in which every typed
 * word begins a word ("bab ca" gives "baby carrots"; shorter names first), then slips and near misses:
 * half a word is not a misspelling of another.
 */
export function suggestFoods<F extends NamedFood>(
  typed: string,
  foods: readonly F[],
  most = SUGGESTED_MOST,
): F[] {
  const { ranked, doubtful } = matchFood(typed, foods);
  const begun = foodsBegun(typed, prepareFoods(foods).foods);
  const spelled = ranked.filter(({ reason }) => reason.kind !== "spelling");
  const rest = [...ranked, ...doubtful].map(foodOf);
  return [...new Set([...spelled.map(foodOf), ...begun, ...rest])].slice(0, most);
}

function foodsBegun<F extends NamedFood>(typed: string, entries: readonly PreparedFood<F>[]): F[] {
  const starts = typed.toLowerCase().match(/[\p{L}\d%]+/gu) ?? [];
  if (starts.length === 0) return [];
  const hits = entries.flatMap(({ food, variants }) => {
    const lengths = variants
      .filter(({ words }) => starts.every((start) => words.some((word) => word.startsWith(start))))
      .map(({ text }) => text.length);
    return lengths.length === 0 ? [] : [{ food, length: Math.min(...lengths) }];
  });
  return hits.sort((left, right) => left.length - right.length).map(foodOf);
}

function foodOf<F extends NamedFood>(holder: { readonly food: F }): F {
  return holder.food;
}
