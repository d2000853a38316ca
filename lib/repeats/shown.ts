import type { Day } from "#lib/calendar/index.ts";

/** An item as it was on, or is planned to be on: a food in a lunch of a day. */
export type ShownItem = {
  readonly on: Day;
  readonly foodId: string;
  readonly familyId: string;
  readonly productId: string | null;
  readonly trickIds: readonly string[];
  /** Staples are exempt from repeat rules and from the echo (water, a house dip). */
  readonly isStaple: boolean;
};

/** A theme week with everything in it; a single lunch is one with that day's items alone. */
export type ShownWeek = {
  /** Its Monday. */
  readonly week: Day;
  readonly themeId: string | null;
  readonly motifs: readonly string[];
  readonly items: readonly ShownItem[];
};

/** What can repeat, from the narrowest to the widest. */
export const REPEAT_LEVELS = ["product", "food", "family", "trick", "theme", "motif"] as const;
export type RepeatLevel = (typeof REPEAT_LEVELS)[number];

/** What an item shows at each level, narrowest first. */
export function subjectsOf(item: ShownItem): { level: RepeatLevel; id: string }[] {
  return [
    ...(item.productId === null ? [] : [{ level: "product" as const, id: item.productId }]),
    { level: "food", id: item.foodId },
    { level: "family", id: item.familyId },
    ...item.trickIds.map((id) => ({ level: "trick" as const, id })),
  ];
}
