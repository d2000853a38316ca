import { fractionOf } from "#lib/base/index.ts";
import { measureOf, type Food } from "#lib/catalog/index.ts";
import type { GroupPlace, OnSale, ShopRecord } from "#lib/db/index.ts";
import { packGramsOf, type FoodOnSale, type Offer } from "#lib/shopping/index.ts";

/** Servings in the pack that is assumed of a food no product is on record for (common practice, no source). */
const ASSUMED_SERVINGS = 4;
const ASSUMED = "assumed:";
/** Fruit and vegetables are sold by the piece from this weight on; lighter ones by the pack (common practice, no source). */
const LOOSE_GROUPS = new Set(["fruit", "vegetable"]);
const PIECE_GRAMS_MIN = 50;

/** Whether a line is of a pack that was assumed, since no product of the food is on record. */
export function isAssumed(productId: string): boolean {
  return productId.startsWith(ASSUMED);
}

/** Names the assumed pack of a food. */
export function assumedProduct(foodId: string): string {
  return ASSUMED + foodId;
}

/** What the offers of foods rest on. */
export type OfferGround = {
  readonly onSale: readonly OnSale[];
  readonly places: readonly GroupPlace[];
  readonly shops: readonly ShopRecord[];
};

/**
 * A food as it can be bought. Products with no known price cost what the servings in them do. Without
 * any product on record, a pack of four servings (one piece, for counted fruit and vegetables) is
 * assumed at the food's own serving price, in the shops that sell its group, else in all.
 */
export function foodOnSale(
  food: Food,
  ground: OfferGround,
  alsoAt: readonly string[] = [],
): FoodOnSale {
  const rows = ground.onSale.filter((row) => row.foodId === food.id);
  const base = { foodId: food.id, name: food.name, shelf: food.shelf };
  if (rows.length === 0) {
    return { ...base, offers: assumedOffers(food, ground, alsoAt), isOnePiece: false };
  }
  const asked = alsoAt
    .filter((shopId) => rows.every((row) => row.shopId !== shopId || row.onlyThere))
    .flatMap((shopId) => {
      const [elsewhere] = rows.filter((row) => !row.onlyThere);
      return elsewhere ? [{ ...elsewhere, shopId }] : [];
    });
  return {
    ...base,
    offers: [...rows, ...asked].flatMap((row) => offerOf(food, row)),
    isOnePiece: rows.every(isOnePiece),
  };
}

function offerOf(food: Food, row: OnSale): Offer[] {
  const { packAmount: amount, packUnit: unit } = row;
  const weighed =
    amount !== null && unit !== null ? packGramsOf(food, { amount, unit }) : undefined;
  const known = row.packGrams !== null && row.packGrams > 0 ? fractionOf(row.packGrams) : undefined;
  const packGrams = weighed?.ok ? weighed.value : known;
  // A pack whose weight nobody knows cannot be counted with; the Larder asks for it.
  if (!packGrams) return [];
  const servings =
    (Number(packGrams.top) / Number(packGrams.bottom)) * (food.yieldFactor / food.servingGrams);
  return [
    {
      productId: row.productId,
      name: row.name,
      packWord: "pack",
      shopId: row.shopId,
      packGrams,
      priceCents: row.cents ?? Math.round(servings * food.servingCents),
    },
  ];
}

function assumedOffers(food: Food, ground: OfferGround, alsoAt: readonly string[]): Offer[] {
  const sellers = new Set(
    ground.places.filter((place) => place.group === food.group).map((place) => place.shopId),
  );
  const some = ground.shops.filter((shop) => sellers.has(shop.id) || alsoAt.includes(shop.id));
  const shops = some.length > 0 ? some : ground.shops;
  const piece = pieceGrams(food);
  const edible = piece ?? ASSUMED_SERVINGS * food.servingGrams;
  const grams = edible / food.yieldFactor;
  return shops.map((shop) => ({
    productId: assumedProduct(food.id),
    name: food.name,
    packWord: piece === undefined ? "pack" : (food.countUnit ?? "piece"),
    shopId: shop.id,
    packGrams: fractionOf(Number(grams.toPrecision(3))),
    priceCents: Math.round((edible / food.servingGrams) * food.servingCents),
  }));
}

function pieceGrams({ group, countUnit, unitWeights }: Food): number | undefined {
  const grams = countUnit === null || !LOOSE_GROUPS.has(group) ? undefined : unitWeights[countUnit];
  return grams !== undefined && grams >= PIECE_GRAMS_MIN ? grams : undefined;
}

/** A single piece that is cut when first used, such as a melon. */
function isOnePiece({ packAmount, packUnit }: OnSale): boolean {
  return packAmount === 1 && packUnit !== null && measureOf(packUnit) === undefined;
}
