import { day, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { BoxChild, BoxItem, BoxLunch } from "#lib/safety/index.ts";
import { referenceCatalogue } from "#seed/index.ts";

export const FOODS: readonly Food[] = referenceCatalogue().foods.map(({ food }) => food);
const BY_ID = new Map<string, Food>(FOODS.map((food) => [food.id, food]));

/** A food of the reference catalogue. */
export function food(id: string): Food {
  const found = BY_ID.get(id);
  if (!found) throw new Error(`The catalogue has no ${id}.`);
  return found;
}

/** An item of a serving for all children. */
export function item(id: string, with_: Partial<BoxItem> = {}): BoxItem {
  const held = food(id);
  return {
    ...{ id: `item-${id}`, food: held, part: held.parts[0] ?? "extra", grams: held.servingGrams },
    ...{ trickIds: [], notFor: [], product: null, recall: null, maybeRecalled: null },
    ...with_,
  };
}

/** A child of nine years who avoids nothing. */
export function child(with_: Partial<BoxChild> = {}): BoxChild {
  return {
    ...{ id: "pepper", name: "Pepper", avoidances: [], ageMonths: 9 * 12, portionFactor: 1 },
    ...with_,
  };
}

export const WEDNESDAY: Day = day("2026-03-11");

/** A lunch of these items. */
export function lunch(...items: readonly BoxItem[]): BoxLunch {
  return { id: "lunch", date: WEDNESDAY, items, outside: null };
}
