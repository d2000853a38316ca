import { describeAmount, gramsOf, type Colour, type Pattern } from "#lib/catalog/index.ts";
import type { ItemRecord } from "#lib/db/index.ts";

/** An item as pages show it. */
export type ItemView = {
  readonly id: string;
  readonly foodId: string;
  readonly name: string;
  readonly part: string;
  /** Edible grams for a child of portion factor 1; a serving where the amount cannot be weighed. */
  readonly grams: number;
  readonly amountText: string;
  readonly amount: number;
  readonly unit: string;
  readonly fate: ItemRecord["fate"];
  readonly reason: string;
  readonly shopId: string;
  readonly shares: readonly { readonly childId: string; readonly amount: number }[];
  readonly tricks: readonly { readonly id: string; readonly name: string }[];
  readonly colour: Colour;
  readonly pattern: Pattern;
};

/** An item with its weight, its words and its tint. */
export function viewItem(item: ItemRecord): ItemView {
  const weighed = gramsOf(item.food, { amount: item.amount, unit: item.unit });
  return {
    id: item.id,
    foodId: item.food.id,
    name: titled(item.food.name),
    part: item.part,
    grams: weighed.ok ? weighed.value : item.food.servingGrams,
    amountText: describeAmount(item.amount, item.unit),
    amount: item.amount,
    unit: item.unit,
    fate: item.fate,
    reason: item.reason,
    shopId: item.shopId ?? "",
    shares: item.shares,
    tricks: item.tricks,
    colour: item.food.colours[0] ?? "cream",
    pattern: item.food.pattern,
  };
}

/** A name as it begins a line: "Cucumber slices". */
function titled(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The items that go into the tray: what was packed, or what is planned. Drinks stand beside it. */
export function inTheTray(items: readonly ItemView[]): ItemView[] {
  return items.filter((item) => item.fate !== "scrapped" && item.part !== "drink");
}
