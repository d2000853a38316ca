import type { Food } from "#lib/catalog/index.ts";
import { creditingKindOf } from "./crediting-kind.ts";

/**
 * Portions of fruit and vegetables as European guides count them: 80 g of the 400 g a day (WHO/FAO), 30 g
 * dried, 150 mL of juice at most once, beans at most once, potatoes and their kin not at all. From memory.
 */
const PORTION_GRAMS = { fresh: 80, dried: 30, juice: 150 } as const;

/** Portions in a box, down to the half; a larger amount never counts for less. */
export function portionsIn(
  items: readonly { readonly food: Food; readonly grams: number }[],
): number {
  let [plain, juice, beans] = [0, 0, 0];
  for (const { food, grams } of items) {
    const kind = creditingKindOf(food);
    if (kind.kind === "fruit" && kind.state === "juice") juice += grams / PORTION_GRAMS.juice;
    else if (kind.kind === "fruit")
      plain += grams / PORTION_GRAMS[kind.state === "dried" ? "dried" : "fresh"];
    else if (kind.kind === "vegetable" && kind.subgroup === "beans")
      beans += grams / PORTION_GRAMS.fresh;
    else if (kind.kind === "vegetable" && food.family !== "potato")
      plain += grams / PORTION_GRAMS.fresh;
  }
  return Math.floor((plain + Math.min(1, juice) + Math.min(1, beans)) * 2 + 1e-9) / 2;
}
