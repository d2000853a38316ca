import type { Food } from "#lib/catalog/index.ts";
import { creditingKindOf, type MeatKind } from "./crediting-kind.ts";

export const PLATE_GROUPS = ["fruit", "vegetables", "grains", "protein", "dairy"] as const;
export type PlateGroup = (typeof PLATE_GROUPS)[number];

/** What a food is on the consumer's plate, in cups or ounce equivalents; null: it is on none of the five. */
export type OnPlate = { readonly group: PlateGroup; readonly amount: number };

/**
 * Grams of one ounce equivalent of protein food on the consumer's plate (USDA MyPlate): one egg, one
 * tablespoon of peanut butter, half an ounce of nuts (read); meat one ounce, tofu ¼ cup (from memory).
 * School counts half of each, which is why the schemes are never mixed.
 */
const PLATE_PROTEIN_GRAMS: Readonly<
  Record<Exclude<MeatKind, "cheese" | "soft-cheese" | "yogurt">, number>
> = {
  ...{ meat: 28, egg: 50, "nut-butter": 16, nuts: 14 },
  ...{ tofu: 62, tempeh: 28, surimi: 28 },
};
/** Grams of one cup of dairy: 1½ oz of natural cheese, 2 oz of soft or processed, a cup of yogurt (from memory). */
const DAIRY_GRAMS = { cheese: 42.5, "soft-cheese": 226, yogurt: 245 } as const;

/** Where a portion stands on the consumer's plate; it never stands for less when it is larger. */
export function onPlate(food: Food, grams: number): OnPlate | null {
  const kind = creditingKindOf(food);
  const cups = food.gramsPerCup === null ? 0 : grams / food.gramsPerCup;
  switch (kind.kind) {
    case "none":
    case "unread":
      return null;
    case "fruit":
      return { group: "fruit", amount: cups * (kind.state === "dried" ? 2 : 1) };
    case "vegetable":
      return { group: "vegetables", amount: cups * (kind.isLeafy ? 0.5 : 1) };
    case "grain":
      return { group: "grains", amount: kind.group === "cooked" ? cups * 2 : grams / 28 };
    case "milk":
      return { group: "dairy", amount: cups };
    case "meat":
      if (kind.meat === "cheese" || kind.meat === "soft-cheese" || kind.meat === "yogurt")
        return { group: "dairy", amount: grams / DAIRY_GRAMS[kind.meat] };
      return { group: "protein", amount: grams / PLATE_PROTEIN_GRAMS[kind.meat] };
  }
}
