/** Catalogue: foods, families, tricks and the words that describe them. */
export {
  Allergen,
  ALLERGENS,
  Appliance,
  APPLIANCES,
  Colour,
  COLOURS,
  FOOD_GROUPS,
  FoodGroup,
  Form,
  FORMS,
  Holding,
  HOLDINGS,
  Part,
  PARTS,
  Pattern,
  PATTERNS,
  Trait,
  TRAITS,
  TRICK_KINDS,
  TrickKind,
} from "./vocabulary.ts";
export { FamilyId, Food, FoodId, PrepStep, ShelfLives, Trick, type TrickId } from "./food.ts";
export { inheritedAllergens, type AllergenSay } from "./inherited-allergens.ts";
export {
  convert,
  CUP_ML,
  describeAmount,
  describeQuantity,
  describeWeighProblem,
  EACH,
  gramsOf,
  isMeasureName,
  LABEL_CUP_ML,
  MEASURES,
  measureOf,
  readQuantity,
  SERVING,
  type Measure,
  type MeasureName,
  type Quantity,
  type ReadQuantity,
  type WeighableFood,
  type WeighProblem,
} from "./quantity/index.ts";
export {
  matchFood,
  prepareFoods,
  suggestFoods,
  SURE_SCORE,
  taughtAlias,
  type FoodMatch,
  type MatchReason,
  type NamedFood,
  type PreparedFoods,
  type RankedFood,
} from "./match/index.ts";
export { readIngredients, type Ingredients } from "./recipe/index.ts";
export { likelyPart, standInsFor, type StandIn } from "./part/index.ts";
export {
  describeDoubt,
  parseQuickLine,
  type QuickDoubt,
  type QuickFood,
  type QuickItem,
} from "./quick-line/index.ts";
export { readAllergens, type LabelReading, type ToldAllergen } from "./label/index.ts";
