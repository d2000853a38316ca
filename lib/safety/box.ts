import type { Day } from "#lib/calendar/index.ts";
import type { Allergen, Food, Part, Trait } from "#lib/catalog/index.ts";
import type { ChildProfile } from "./child.ts";

/** What the record of a product says about it. */
export type LabelRecord = {
  readonly name: string;
  readonly allergens: readonly Allergen[];
  readonly maybeAllergens: readonly Allergen[];
  readonly traits: readonly Trait[];
};

/** An item as the checks see one; scrapped items are not handed in. */
export type BoxItem = {
  readonly id: string;
  readonly food: Food;
  readonly part: Part;
  /** Edible grams for a child of portion factor 1. */
  readonly grams: number;
  readonly trickIds: readonly string[];
  /** Children who get none of it. */
  readonly notFor: readonly string[];
  readonly product: LabelRecord | null;
  /** What was noted when the food or product was recalled or became suspect; null: it was not. */
  readonly recall: string | null;
  /** A product of the food that is marked, where nobody noted which product this is; else null. */
  readonly maybeRecalled: string | null;
};

/** A lunch as the checks see one. */
export type BoxLunch = {
  readonly id: string;
  readonly date: Day;
  readonly items: readonly BoxItem[];
  /** Temperature outdoors that day, typed or by the month's climate; null: not said. */
  readonly outside: { readonly celsius: number; readonly isTyped: boolean } | null;
};

/** A child with what the shape and heat checks ask besides. */
export type BoxChild = ChildProfile & {
  /** Whole months on the day of the lunch; null: no birth month on record. */
  readonly ageMonths: number | null;
  /** 1 is the portion that amounts are written for. */
  readonly portionFactor: number;
};

/** True when some of the item is for this child. */
export function isFor(item: BoxItem, child: { readonly id: string }): boolean {
  return !item.notFor.includes(child.id);
}
