import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { ProductInput } from "./product.input.ts";

export type SaveProductProblem = {
  readonly kind: "gone" | "food-gone" | "shop-gone" | "changed-elsewhere";
};

/**
 * Saves a product as typed, or adds one where the input has no id, with the shops that sell it; a
 * typed price joins its history. Refuses when another tab saved first.
 */
export async function saveProduct(
  { db, today }: Context,
  input: ProductInput,
): Promise<Result<string, SaveProductProblem>> {
  return inTransaction(db, async (tx) => {
    const food = await tx.food.findUnique({ where: { id: input.foodId } });
    if (!food || food.mergedIntoId !== null) return refuse({ kind: "food-gone" });
    const shopIds = input.shops.map(({ shopId }) => shopId);
    if ((await tx.shop.count({ where: { id: { in: shopIds } } })) !== new Set(shopIds).size)
      return refuse({ kind: "shop-gone" });
    const before = input.id === "" ? undefined : await readOwn(tx, input);
    if (before === null) return refuse({ kind: "gone" });
    if (before && before.revision !== input.revision) return refuse({ kind: "changed-elsewhere" });

    const data = columnsOf(input);
    const { id } = before
      ? await tx.product.update({
          where: { id: before.id },
          data: { ...data, revision: before.revision + 1 },
        })
      : await tx.product.create({ data: { ...data, foodId: input.foodId } });
    await saveShops(tx, id, input, input.priceOn || today);
    return ok(id);
  });
}

/** Words for a refusal. */
export function describeSaveProductProblem({ kind }: SaveProductProblem): string {
  switch (kind) {
    case "gone":
      return "This product was removed meanwhile. Reload the page.";
    case "food-gone":
      return "Its food was merged into another meanwhile. Open the Larder again.";
    case "shop-gone":
      return "A shop named here is no longer on record. Reload the page.";
    case "changed-elsewhere":
      return "Another tab changed this product after you opened it. Nothing was overwritten: what you typed still stands here. Reload to see the other version.";
  }
}

function readOwn(tx: Db, { id, foodId }: ProductInput) {
  return tx.product.findFirst({ where: { id, foodId }, select: { id: true, revision: true } });
}

function columnsOf(input: ProductInput) {
  const isAllYear = input.months.length === 0 || input.months.length === 12;
  return {
    ...{ name: input.name, flavour: input.flavour, status: input.status },
    ...{ packAmount: input.packGrams, packUnit: "g", packGrams: input.packGrams },
    seasonJson: isAllYear ? null : JSON.stringify([...input.months].sort((a, b) => a - b)),
    provenance: input.provenance,
    disclosure: input.provenance === "bought" ? "" : input.disclosure,
    allergensJson: JSON.stringify(input.allergens),
    maybeJson: JSON.stringify(input.maybe.filter((one) => !input.allergens.includes(one))),
    traitsJson: JSON.stringify(input.traits),
  };
}

async function saveShops(
  tx: Db,
  productId: string,
  input: ProductInput,
  on: string,
): Promise<void> {
  await tx.productShop.deleteMany({ where: { productId } });
  const sold = input.shops.filter(({ isSold }) => isSold);
  await tx.productShop.createMany({
    data: sold.map(({ shopId, aisle, onlyThere }) => ({ productId, shopId, aisle, onlyThere })),
  });
  for (const { shopId, price } of sold) {
    if (price === null) continue;
    // One price a day and shop: a second one corrects the first.
    await tx.price.deleteMany({ where: { productId, shopId, on } });
    await tx.price.create({ data: { productId, shopId, on, cents: price } });
  }
}
