import { numberOf } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import { readChildren, readEpisode, readLotRecords, type Db, type Fate } from "#lib/db/index.ts";
import { allocate, needsOf, supplyOfLot, type Need } from "#lib/shopping/index.ts";
import { takeFrom } from "./change-stock.ts";
import { plannedItems } from "./planned-items.ts";

/** Less than this is left in a pack that is empty: amounts are weighed, kitchens are not. */
const TRACE_GRAMS = 0.5;

/**
 * Takes from stock what a lunch packs, soonest last day first and opened before closed; what is not on
 * record is not missed. What each item took is kept, for `putBack`. A food that was owed and goes into
 * the tin is owed no longer. Call it in the transaction that shuts the lid, before the items' fates
 * change; later, with the ids of those that went in after the lid was shut.
 */
export async function takeFromStock(
  tx: Db,
  lunchId: string,
  on: Day,
  itemIds?: readonly string[],
): Promise<void> {
  const lunch = (await readEpisode(tx, mondayOf(on)))?.lunches.find((one) => one.id === lunchId);
  if (!lunch) return;
  const fates: readonly Fate[] = ["planned", "packed", "stepped-in"];
  const items = plannedItems([lunch], await readChildren(tx), fates).filter(
    ({ id }) => itemIds?.includes(id) ?? true,
  );
  const shelves = new Map(items.map(({ food }) => [food.id as string, food.shelf]));
  for (const need of needsOf(items).needs) {
    const shelf = shelves.get(need.foodId);
    if (shelf) await takeNeed(tx, shelf, need, on);
  }
  await tx.lunchItem.updateMany({
    where: {
      foodId: { in: [...shelves.keys()] },
      fate: "scrapped",
      settledOn: null,
      lunch: { date: { lt: on } },
    },
    data: { settledOn: on, settledHow: "used" },
  });
}

async function takeNeed(
  tx: Db,
  shelf: Parameters<typeof supplyOfLot>[1],
  { foodId, itemId, asPurchased }: Need,
  on: Day,
): Promise<void> {
  const lots = (await readLotRecords(tx)).filter(
    (lot) =>
      lot.foodId === foodId && !lot.isRecalled && (lot.boughtOn === null || lot.boughtOn <= on),
  );
  const { uses } = allocate(
    [{ day: on, grams: asPurchased }],
    lots.map((lot) => supplyOfLot(lot, shelf)),
  );
  for (const use of uses) {
    const lot = lots.find((one) => one.id === use.supplyId);
    if (!lot) continue;
    const wanted = numberOf(use.grams);
    const grams = lot.grams - wanted < TRACE_GRAMS ? lot.grams : wanted;
    await takeFrom(tx, lot, grams, on, "used");
    const isOpening = lot.openedOn === null;
    await tx.stockUse.create({ data: { lotId: lot.id, itemId, grams, on, isOpening } });
  }
}
