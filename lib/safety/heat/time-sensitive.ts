import type { Allergen, Food } from "#lib/catalog/index.ts";

const ANIMAL: ReadonlySet<Allergen> = new Set(["milk", "egg", "fish", "crustacean", "mollusc"]);
/** Cut melon, cut leafy greens, cut tomatoes and raw sprouts are named one by one. */
const NAMED: ReadonlySet<string> = new Set(["melon", "salad-leaves", "tomato", "sprouts"]);

/**
 * True for a food that time or temperature must control once it leaves the cold or the heat (FDA Food Code
 * 1-201.10(B)): animal food, cooked plant food, and the cut produce that the code names. Other cut
 * produce is kept cold for its sake only; what needs neither cold nor heat never counts.
 */
export function isTimeSensitive(
  food: Pick<Food, "group" | "family" | "form" | "holding" | "allergens">,
): boolean {
  if (food.holding === "none") return false;
  if (food.holding !== "cold") return true;
  if (food.group === "protein" || food.group === "dairy" || food.group === "grain") return true;
  if (food.allergens.some((allergen) => ANIMAL.has(allergen))) return true;
  // Whole tomatoes and whole round fruit are not cut.
  return NAMED.has(food.family) && food.form !== "round-firm";
}
