import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { Db } from "#lib/db/index.ts";
import { usualPlace } from "#lib/shopping/index.ts";

/** A line that was bought. */
type BoughtLine = {
  readonly lineId: string;
  readonly shopId: string;
  readonly foodId: string | null;
  readonly productId: string | null;
  readonly packs: number;
  /** Packs it was ticked with before; null when it was not bought yet. */
  readonly packsBefore: number | null;
  readonly packGrams: number | null;
  readonly paidCents: number | null;
  readonly on: Day;
};

/**
 * What was bought becomes a lot in its usual place, and a price paid the product's price there. Told
 * twice, or with other packs, the lot and the price change and are not doubled. Food whose pack nobody
 * has weighed makes no lot.
 */
export async function putAway(
  tx: Db,
  line: BoughtLine,
  shelf: Food["shelf"] | undefined,
): Promise<void> {
  const { foodId, productId, packs, paidCents, on } = line;
  const id = lotIdOf(line.lineId);
  const before = await tx.stock.findUnique({ where: { id } });
  if (before) {
    const isUntouched = before.openedOn === null && before.goneOn === null;
    const grams =
      isUntouched && line.packsBefore ? (before.grams / line.packsBefore) * packs : before.grams;
    await tx.stock.update({ where: { id }, data: { grams, paidCents } });
  } else if (foodId !== null && shelf && line.packGrams !== null) {
    const grams = packs * line.packGrams;
    const place = usualPlace(shelf);
    await tx.stock.create({
      data: { id, foodId, productId, grams, boughtOn: on, place, paidCents },
    });
  }
  await notePrice(tx, line);
}

/** A tick taken back: the lot goes unless some of it was opened, used or thrown away since. */
export async function takeBack(tx: Db, lineId: string): Promise<void> {
  await tx.stock.deleteMany({ where: { id: lotIdOf(lineId), openedOn: null, goneOn: null } });
  await tx.price.deleteMany({ where: { id: priceIdOf(lineId) } });
}

async function notePrice(tx: Db, line: BoughtLine): Promise<void> {
  const { productId, shopId, paidCents, packs, on } = line;
  const id = priceIdOf(line.lineId);
  if (productId === null || paidCents === null) {
    await tx.price.deleteMany({ where: { id } });
    return;
  }
  const cents = Math.round(paidCents / packs);
  await tx.price.upsert({
    where: { id },
    create: { id, productId, shopId, cents, on },
    update: { cents },
  });
}

function lotIdOf(lineId: string): string {
  return `bought ${lineId}`;
}

function priceIdOf(lineId: string): string {
  return `paid ${lineId}`;
}
