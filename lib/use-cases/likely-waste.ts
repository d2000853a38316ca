import type { Food } from "#lib/catalog/index.ts";
import { livesOf, PERISHABLE_DAYS_MAX, usualPlace, type FoodOnSale } from "#lib/shopping/index.ts";

/** What of an opened pack's rest spoils; the family eats the others (common practice, no source). */
const SPOILED_SHARE = 1 / 3;

/**
 * Money likely to spoil when a food is packed once for so many children, in cents: a share of what the
 * most fitting pack leaves over, where it does not keep. The same food a few days later would use it up,
 * but its rest rarely lets it come so soon.
 */
export function likelyWasteCents(food: Food, sale: FoodOnSale, children: number): number {
  const { openedDays, unopenedDays } = livesOf(food.shelf, usualPlace(food.shelf), sale.isOnePiece);
  const keeps = openedDays ?? unopenedDays;
  if (keeps === null || keeps > PERISHABLE_DAYS_MAX || sale.offers.length === 0) return 0;
  const need = (food.servingGrams * Math.max(1, children)) / food.yieldFactor;
  const leftCents = sale.offers.map(({ packGrams, priceCents }) => {
    const grams = Number(packGrams.top) / Number(packGrams.bottom);
    const packs = Math.ceil(need / grams - 1e-9);
    return ((packs * grams - need) * priceCents) / grams;
  });
  return SPOILED_SHARE * Math.min(...leftCents);
}
