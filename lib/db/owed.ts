import { Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";
import { readFoodsById } from "./foods.ts";
import type { ItemRecord } from "./weeks.ts";

/** A scrapped item that is not settled. */
export type OwedItem = Pick<
  ItemRecord,
  "id" | "food" | "productId" | "shopId" | "amount" | "unit" | "fate" | "reason" | "shares"
> & {
  readonly date: Day;
  /** As noted when it was scrapped; null when nothing was. */
  readonly useBy: Day | null;
};

/** Every scrapped item that is still owed, by day. */
export async function readOwedItems(db: Db): Promise<OwedItem[]> {
  const rows = await db.lunchItem.findMany({
    where: { fate: "scrapped", settledOn: null },
    include: { shares: true, lunch: { select: { date: true } } },
    orderBy: [{ lunch: { date: "asc" } }, { position: "asc" }],
  });
  const foods = await readFoodsById(db, [...new Set(rows.map(({ foodId }) => foodId))]);
  return rows.flatMap((row) => {
    const food = foods.get(row.foodId);
    if (!food) return [];
    const { id, productId, shopId, amount, unit, reason, shares } = row;
    return [
      {
        ...{ id, food, productId, shopId, amount, unit, reason, shares },
        fate: "scrapped" as const,
        date: Day.parse(row.lunch.date),
        useBy: row.owedUseBy === null ? null : Day.parse(row.owedUseBy),
      },
    ];
  });
}
