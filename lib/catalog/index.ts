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
