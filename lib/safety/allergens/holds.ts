import type { Allergen } from "#lib/catalog/index.ts";
import type { BoxItem } from "../box.ts";

/**
 * How an item stands to an allergen: it holds it; some makes do, so the label decides; or some makes
 * do and the recorded label of this product does not list it. Undefined: neither record speaks of it,
 * which is no promise. A recorded label never takes away what the food holds.
 */
export type Holds = "holds" | "some-makes" | "label-silent";

/** How an item stands to an allergen, by the food and by the product's record. */
export function holdsOf({ food, product }: BoxItem, allergen: Allergen): Holds | undefined {
  if (food.allergens.includes(allergen) || product?.allergens.includes(allergen)) return "holds";
  if (product?.maybeAllergens.includes(allergen)) return "some-makes";
  if (!food.maybeAllergens.includes(allergen)) return undefined;
  const isRecorded =
    product !== null && product.allergens.length + product.maybeAllergens.length > 0;
  return isRecorded ? "label-silent" : "some-makes";
}
