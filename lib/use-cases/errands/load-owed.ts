import { numberOf } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  readChildren,
  readLotRecords,
  readOwedItems,
  type Db,
} from "#lib/db/index.ts";
import { describeOwed, lastDayOf, needsOf, stillOwed, type OwedFood } from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { plannedItems } from "./planned-items.ts";

/** A food that was scrapped and is not settled, as pages show it. */
export type OwedView = {
  readonly itemId: string;
  readonly foodId: string;
  readonly food: string;
  readonly grams: number;
  readonly useBy: Day | null;
  readonly daysLeft: number | null;
  /** "pears, 200 g, from Mon 9 March: by Thu 12 March, in 2 days" */
  readonly sentence: string;
  readonly reason: string;
  /** Past its use-by it can only be let go. */
  readonly isOver: boolean;
};

/** What is owed, soonest use-by first. */
export async function loadOwed({ db, today }: Context): Promise<readonly OwedView[]> {
  return keepUntilWritten(db, `owed ${today}`, async () => {
    const owed = await readOwed(db, today);
    const reasons = new Map(owed.map(({ id, reason }) => [id, reason]));
    return stillOwed(owed, today).map(({ owed: food, daysLeft }) => ({
      itemId: food.id,
      foodId: food.foodId,
      food: food.foodName,
      grams: food.grams,
      useBy: food.useBy,
      daysLeft,
      sentence: describeOwed({ owed: food, daysLeft }),
      reason: reasons.get(food.id) ?? "",
      isOver: daysLeft !== null && daysLeft < 0,
    }));
  });
}

/**
 * Scrapped items that were in the house: the lunch's day has come, stock of the food is on record, or a
 * use-by was noted. The use-by noted counts, else the soonest last day of the food's lots.
 */
export async function readOwed(
  db: Db,
  today: Day,
): Promise<readonly (OwedFood & { readonly reason: string })[]> {
  const [rows, children, lots] = await Promise.all([
    readOwedItems(db),
    readChildren(db),
    readLotRecords(db),
  ]);
  const { needs } = needsOf(
    plannedItems(
      rows.map((row) => ({ date: row.date, items: [row] })),
      children,
      ["scrapped"],
    ),
  );
  return rows.flatMap((row) => {
    const { id, food, reason } = row;
    const own = lots.filter((lot) => lot.foodId === food.id && lot.place !== "freezer");
    if (row.date > today && own.length === 0 && row.useBy === null) return [];
    const ends = own.flatMap((lot) => lastDayOf(lot, food.shelf) ?? []).sort();
    const need = needs.find((one) => one.itemId === id);
    return [
      {
        ...{ id, foodId: food.id, foodName: food.name, reason, since: row.date, settled: null },
        grams: Math.min(
          need ? numberOf(need.asPurchased) : food.servingGrams,
          // No more can be owed than there is, where it is on record.
          own.length === 0 ? Infinity : own.reduce((sum, lot) => sum + lot.grams, 0),
        ),
        useBy: row.useBy ?? ends[0] ?? null,
      },
    ];
  });
}
