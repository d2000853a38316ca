/** Matching: from a typed phrase to the food it means. */
export {
  matchFood,
  SURE_SCORE,
  type FoodMatch,
  type MatchReason,
  type RankedFood,
} from "./match-food.ts";
export { prepareFoods, type NamedFood, type PreparedFoods } from "./prepare-foods.ts";
export { suggestFoods } from "./suggest-foods.ts";
export { taughtAlias } from "./taught-alias.ts";
