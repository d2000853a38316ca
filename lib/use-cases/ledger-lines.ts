import { groupBy } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { gramsOf, type Food } from "#lib/catalog/index.ts";
import {
  keepUntilWritten,
  readFoodsById,
  readVerdicts,
  type Db,
  type VerdictRecord,
} from "#lib/db/index.ts";
import type { LedgerLine } from "#lib/reactions/index.ts";

/** A verdict, priced, with the tricks its item wore. */
export type PricedLine = LedgerLine & { readonly verdict: VerdictRecord };

/** Every verdict with what that child's amount cost, oldest first; shared until something is written. */
export function loadLedgerLines(db: Db): Promise<readonly PricedLine[]> {
  return keepUntilWritten(db, "ledger lines", async () => {
    const verdicts = await readVerdicts(db);
    const foodIds = [...new Set(verdicts.map(({ foodId }) => foodId))];
    const [foods, children, priceOf] = await Promise.all([
      readFoodsById(db, foodIds),
      db.child.findMany({ select: { id: true, portionFactor: true } }),
      readPackPrices(db),
    ]);
    const factors = new Map(children.map(({ id, portionFactor }) => [id, portionFactor]));
    const weights = new Map<string, number | undefined>();
    return verdicts.map((verdict) => {
      const food = foods.get(verdict.foodId);
      const key = `${verdict.foodId} ${verdict.amount} ${verdict.unit}`;
      if (!weights.has(key)) weights.set(key, food && weigh(food, verdict));
      const grams = weights.get(key);
      const portion = grams === undefined ? null : grams * (factors.get(verdict.childId) ?? 1);
      return {
        verdict,
        part: verdict.part,
        cents: food ? centsOf(food, verdict, portion, priceOf) : null,
      };
    });
  });
}

type PriceOf = (productId: string, on: Day) => { cents: number; packGrams: number } | undefined;

/** The product's price on that day where one is known, else the food's usual one; null when neither is. */
function centsOf(
  food: Food,
  verdict: VerdictRecord,
  grams: number | null,
  priceOf: PriceOf,
): number | null {
  if (grams === null) return null;
  const price = verdict.productId === null ? undefined : priceOf(verdict.productId, verdict.day);
  if (price) return (price.cents * (grams / food.yieldFactor)) / price.packGrams;
  return food.servingCents > 0 ? (food.servingCents * grams) / food.servingGrams : null;
}

function weigh(food: Food, { amount, unit }: VerdictRecord): number | undefined {
  const weighed = gramsOf(food, { amount, unit });
  return weighed.ok ? weighed.value : undefined;
}

/** Latest noted price of a product on or before a day, or its first one when all are later. */
async function readPackPrices(db: Db): Promise<PriceOf> {
  const rows = await db.price.findMany({
    where: { product: { packGrams: { gt: 0 } } },
    orderBy: { on: "asc" },
    select: { productId: true, cents: true, on: true, product: { select: { packGrams: true } } },
  });
  const byProduct = groupBy(rows, ({ productId }) => productId);
  return (productId, on) => {
    const prices = byProduct.get(productId);
    const price = prices?.findLast((one) => one.on <= on) ?? prices?.[0];
    const packGrams = price?.product.packGrams;
    return price && packGrams ? { cents: price.cents, packGrams } : undefined;
  };
}
