import { addDays, day, type Day } from "#lib/calendar/index.ts";
import type { ShownItem, ShownWeek } from "#lib/repeats/index.ts";

/** An item on a day; the family is the food's id up to its first hyphen. */
export function item(on: Day, foodId: string, more: Partial<ShownItem> = {}): ShownItem {
  const familyId = foodId.split("-")[0] ?? foodId;
  return { on, foodId, familyId, productId: null, trickIds: [], isStaple: false, ...more };
}

/** A week whose foods are on from Monday on, one a day, five days round. */
export function weekOf(
  monday: string,
  foods: readonly string[],
  more: Partial<Omit<ShownWeek, "week" | "items">> = {},
): ShownWeek {
  const week = day(monday);
  const items = foods.map((food, index) => item(addDays(week, index % 5), food));
  return { week, themeId: null, motifs: [], items, ...more };
}
