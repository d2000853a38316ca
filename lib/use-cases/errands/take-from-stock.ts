import { groupBy, numberOf } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import { readChildren, readEpisode, readLotRecords, type Db } from "#lib/db/index.ts";
import { allocate, needsOf, supplyOfLot, type Need } from "#lib/shopping/index.ts";
import { takeFrom } from "./change-stock.ts";
import { plannedItems } from "./planned-items.ts";

/** Less than this is left in a pack that is empty: amounts are weighed, kitchens are not. */
const TRACE_GRAMS = 0.5;

/**
 * Takes from stock what a lunch packs, soonest last day first and opened before closed; what is not on
 * record is not missed. A food that was owed and goes into the tin is owed no longer. Call it once, in
 * the transaction that shuts the lid, before the items' fates change.
 */
export async function takeFromStock(tx: Db, lunchId: string, on: Day): Promise<void> {
  const lunch = (await readEpisode(tx, mondayOf(on)))?.lunches.find((one) => one.id === lunchId);
  if (!lunch) return;
  const items = plannedItems([lunch], await readChildren(tx), ["planned", "stepped-in"]);
  const shelves = new Map(items.map(({ food }) => [food.id as string, food.shelf]));
  for (const [foodId, needs] of groupBy(needsOf(items).needs, (need) => need.foodId)) {
    const shelf = shelves.get(foodId);
    if (shelf) await takeNeeds(tx, foodId, shelf, needs, on);
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

async function takeNeeds(
  tx: Db,
  foodId: string,
  shelf: Parameters<typeof supplyOfLot>[1],
  needs: readonly Need[],
  on: Day,
): Promise<void> {
  const lots = (await readLotRecords(tx)).filter(
    (lot) => lot.foodId === foodId && (lot.boughtOn === null || lot.boughtOn <= on),
  );
  const { uses } = allocate(
    needs.map((need) => ({ day: on, grams: need.asPurchased })),
    lots.map((lot) => supplyOfLot(lot, shelf)),
  );
  for (const use of uses) {
    const lot = lots.find((one) => one.id === use.supplyId);
    if (!lot) continue;
    const grams = numberOf(use.grams);
    const isEmptied = lot.grams - grams < TRACE_GRAMS;
    await takeFrom(tx, lot, isEmptied ? lot.grams : grams, on, "used");
  }
}
