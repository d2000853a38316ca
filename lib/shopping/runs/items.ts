import { groupBy } from "#lib/base/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { type Supply, supplyOfLot } from "../allocate.ts";
import type { Need } from "../need.ts";
import { livesOf, type Lot, usualPlace } from "../shelf.ts";
import type { Offer, RunItem } from "./problem.ts";

/** What is known of a food when its shopping is planned. */
export type FoodOnSale = {
  readonly foodId: string;
  readonly name: string;
  readonly shelf: Food["shelf"];
  readonly offers: readonly Offer[];
  /** Its packs are single pieces that are cut when first used, such as a melon. */
  readonly isOnePiece: boolean;
};

/** Foods that keep no longer than this are wasted when left over (*common practice, no source*). */
export const PERISHABLE_DAYS_MAX = 14;

/** Food that is there or certain to be bought, and what it is. */
export type OnHand = {
  readonly foodId: string;
  readonly productId: string | null;
  readonly supply: Supply;
};

/**
 * Needs gathered into items to buy, one per food. Where a lunch asks for one product by name, the
 * food's other needs take it too, so that no second pack is opened beside it; where lunches ask for
 * different products, each is an item of its own and the rest goes with the first. What is on hand of a
 * food serves an item that names no other product. `wasteShare` is the part of its price that a
 * perishable gram counts when it is not used (1: all of it).
 */
export function runItemsOf(
  needs: readonly Need[],
  foods: ReadonlyMap<string, FoodOnSale>,
  onHand: readonly OnHand[],
  wasteShare = 1,
): RunItem[] {
  const byFood = [...groupBy(needs, (need) => need.foodId)];
  return byFood.flatMap(([foodId, own]) => {
    const food = foods.get(foodId);
    if (!food) throw new Error(`No food to buy is given for ${foodId}`);
    const [named = null] = own.flatMap((need) => need.productId ?? []);
    const byProduct = groupBy(own, (need) => need.productId ?? named);
    const used = new Set<string>();
    return [...byProduct].map(([productId, parts]): RunItem => {
      const fitting = onHand.filter(
        (one) =>
          one.foodId === foodId &&
          !used.has(one.supply.id) &&
          (productId === null || one.productId === null || one.productId === productId),
      );
      for (const { supply } of fitting) used.add(supply.id);
      return {
        id: productId === null ? foodId : `${foodId}/${productId}`,
        name: food.name,
        needs: parts.map((need) => ({ day: need.day, grams: need.asPurchased })),
        supplies: fitting.map(({ supply }) => supply),
        offers: food.offers.filter((offer) => productId === null || offer.productId === productId),
        lives: livesOf(food.shelf, usualPlace(food.shelf), food.isOnePiece),
        wasteCentsPerGram: wasteShare * wasteCentsOf(food),
      };
    });
  });
}

/** Lots as what is on hand of some foods; lots of other foods are left out. */
export function onHandOf(
  lots: readonly Lot[],
  foods: ReadonlyMap<string, Pick<FoodOnSale, "shelf" | "isOnePiece">>,
): OnHand[] {
  return lots.flatMap((lot) => {
    const food = foods.get(lot.foodId);
    if (!food) return [];
    const { foodId, productId } = lot;
    return [{ foodId, productId, supply: supplyOfLot(lot, food.shelf, food.isOnePiece) }];
  });
}

/** Cents of a gram at the cheapest offer when the food perishes, else zero. */
function wasteCentsOf({ shelf, offers }: FoodOnSale): number {
  const { unopenedDays } = livesOf(shelf, usualPlace(shelf));
  if (unopenedDays === null || unopenedDays > PERISHABLE_DAYS_MAX || offers.length === 0) return 0;
  return Math.min(
    ...offers.map(({ priceCents, packGrams }) => {
      return (priceCents * Number(packGrams.bottom)) / Number(packGrams.top);
    }),
  );
}
