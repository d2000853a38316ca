import type { Db } from "#lib/db/index.ts";
import { ANY_SHOP } from "./ground.ts";

/** Makes "Any shop" a record once something is bought there; every other shop is one already. */
export async function ensureShop(tx: Db, shopId: string): Promise<void> {
  if (shopId !== ANY_SHOP.id) return;
  const { id, name, distanceOrder } = ANY_SHOP;
  await tx.shop.upsert({
    where: { id },
    create: { id, name, distanceOrder, daysJson: JSON.stringify(ANY_SHOP.days) },
    update: {},
  });
}
