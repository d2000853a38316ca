import type { Db } from "#lib/db/index.ts";

/**
 * Puts back into stock what an item of a shut tin had taken; before the lid is shut nothing was. A pack
 * that was used up is there again. A pack it opened stays open, unless `isUndone` says that the item
 * never was in the tin and nothing else has taken from that pack since. What was owed and counted as
 * used by it is owed again. Call it in the transaction that takes the item out, before its fate changes.
 */
export async function putBack(tx: Db, itemId: string, isUndone: boolean): Promise<void> {
  const item = await tx.lunchItem.findUnique({ where: { id: itemId }, include: { lunch: true } });
  if (!item || item.lunch.packedAt === null) return;
  await putIntoLots(tx, itemId, isUndone);
  const { foodId, lunchId, lunch } = item;
  const others = await tx.lunchItem.count({
    where: { foodId, lunchId, id: { not: itemId }, fate: { not: "scrapped" } },
  });
  if (others > 0) return;
  await tx.lunchItem.updateMany({
    where: {
      ...{ foodId, fate: "scrapped", settledOn: lunch.date, settledHow: "used" },
      lunch: { date: { lt: lunch.date } },
    },
    data: { settledOn: null, settledHow: null },
  });
}

async function putIntoLots(tx: Db, itemId: string, isUndone: boolean): Promise<void> {
  const uses = await tx.stockUse.findMany({
    where: { itemId },
    include: { lot: { include: { _count: { select: { uses: true } } } } },
  });
  for (const { lot, grams, on, isOpening } of uses) {
    const isUsedUp = lot.goneHow === "used";
    const isClosedAgain = isUndone && isOpening && lot.openedOn === on && lot._count.uses === 1;
    const { foodId, productId, boughtOn, useBy, place } = lot;
    const openedOn = isClosedAgain ? null : (lot.openedOn ?? on);
    if (lot.goneOn === null || isUsedUp) {
      const total = isUsedUp ? grams : lot.grams + grams;
      const data = { grams: total, openedOn, goneOn: null, goneHow: null };
      await tx.stock.update({ where: { id: lot.id }, data });
    } else {
      // The rest was thrown away meanwhile: what comes back is a pack of its own.
      await tx.stock.create({
        data: { foodId, productId, grams, boughtOn, useBy, place, openedOn },
      });
    }
  }
  await tx.stockUse.deleteMany({ where: { itemId } });
}
