import type { Food } from "./food.ts";
import { ALLERGENS, type Allergen } from "./vocabulary.ts";

/** What something is said to hold: for sure, and in some makes ("check the label"). */
export type AllergenSay = {
  readonly allergens: readonly Allergen[];
  readonly maybeAllergens: readonly Allergen[];
};

/**
 * What a product is said to hold: all that its food holds, and what its own label adds. What the
 * catalogue says of some makes stays "check the label" whatever the product's record says, since a
 * label without a warning proves nothing (FDA, voluntary advisory labelling). An item holds what its
 * product holds, or its food where no product is named.
 */
export function inheritedAllergens(
  food: Pick<Food, "allergens" | "maybeAllergens">,
  product?: AllergenSay,
): AllergenSay {
  const sure = new Set([...food.allergens, ...(product?.allergens ?? [])]);
  const maybe = new Set([...food.maybeAllergens, ...(product?.maybeAllergens ?? [])]);
  return {
    allergens: ALLERGENS.filter((allergen) => sure.has(allergen)),
    maybeAllergens: ALLERGENS.filter((allergen) => maybe.has(allergen) && !sure.has(allergen)),
  };
}
