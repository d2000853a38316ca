import { readAllergens, type Allergen, type Food } from "#lib/catalog/index.ts";
import type { BoxItem } from "../box.ts";

/**
 * How an item stands to an allergen: it holds it; some makes do, so the label decides; its name speaks
 * of it and no record does; or some makes do and the recorded label of this product does not list it.
 * Undefined: nothing on record speaks of it, which is no promise. A recorded label never takes away what
 * the food holds.
 */
export type Holds = "holds" | "some-makes" | "named" | "label-silent";

/** How an item stands to an allergen, by the food, the product's record and their names. */
export function holdsOf({ food, product }: BoxItem, allergen: Allergen): Holds | undefined {
  if (food.allergens.includes(allergen) || product?.allergens.includes(allergen)) return "holds";
  if (product?.maybeAllergens.includes(allergen)) return "some-makes";
  if (!food.maybeAllergens.includes(allergen)) {
    return namesAllergen(food, allergen) || (product && namesAllergen(product, allergen))
      ? "named"
      : undefined;
  }
  const isRecorded =
    product !== null && product.allergens.length + product.maybeAllergens.length > 0;
  return isRecorded ? "label-silent" : "some-makes";
}

/** True when the food holds an allergen, may hold it, or bears a name that speaks of it. */
export function mayHold(food: Food, allergen: Allergen): boolean {
  return (
    food.allergens.includes(allergen) ||
    food.maybeAllergens.includes(allergen) ||
    namesAllergen(food, allergen)
  );
}

const READ = new WeakMap<object, ReadonlySet<Allergen>>();

/** Whoever typed "tahini twist" and ticked nothing is asked all the same. */
function namesAllergen(named: { readonly name: string }, allergen: Allergen): boolean {
  const known = READ.get(named);
  if (known) return known.has(allergen);
  const read = new Set(readAllergens(named.name).holds.map((told) => told.allergen));
  READ.set(named, read);
  return read.has(allergen);
}
