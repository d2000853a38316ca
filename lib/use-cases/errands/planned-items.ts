import type { ChildRecord, Fate, ItemRecord, LunchRecord } from "#lib/db/index.ts";
import type { PlannedItem } from "#lib/shopping/index.ts";

/** A lunch as far as amounts go. */
type LunchAmounts = Pick<LunchRecord, "date"> & {
  readonly items: readonly Pick<
    ItemRecord,
    "id" | "food" | "productId" | "shopId" | "amount" | "unit" | "fate" | "shares"
  >[];
};

/** The items of some lunches that have one of the fates, with who eats how much of each. */
export function plannedItems(
  lunches: readonly LunchAmounts[],
  children: readonly ChildRecord[],
  fates: readonly Fate[],
): (PlannedItem & { readonly shopId: string | null })[] {
  const eaters = children.filter((child) => !child.isRetired);
  return lunches.flatMap((lunch) =>
    lunch.items
      .filter(({ fate }) => fates.includes(fate))
      .map((item) => ({
        id: item.id,
        day: lunch.date,
        food: item.food,
        productId: item.productId,
        shopId: item.shopId,
        amount: item.amount,
        unit: item.unit,
        // A series without children on record is counted for one.
        eaters:
          eaters.length === 0
            ? [{ childId: "someone", portionFactor: 1, share: null }]
            : eaters.map(({ id, portionFactor }) => ({
                childId: id,
                portionFactor,
                share: item.shares.find((share) => share.childId === id)?.amount ?? null,
              })),
      })),
  );
}
