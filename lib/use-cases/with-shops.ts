import { groupBy } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { readGroupPlaces, readHomeMade, readOnSale, readShops, type Db } from "#lib/db/index.ts";
import type { PlanProblem } from "#lib/planner/index.ts";
import { foodOnSale } from "./errands/offers.ts";
import { likelyWasteCents } from "./likely-waste.ts";

/** The planner lists every tour of shops, so the nearest so many take part. */
const SHOPS_MAX = 8;

/**
 * The problem with the shops each item can be had at: those of its food's products, else those that sell
 * its group, as the errands assume it too, and the money likely to spoil of the packs sold there. What is
 * made at home needs no shop.
 */
export async function withShops(
  db: Db,
  problem: PlanProblem,
  foods: readonly Food[],
  on: Day,
): Promise<PlanProblem> {
  const shops = (await readShops(db)).filter(({ isRetired }) => !isRetired).slice(0, SHOPS_MAX);
  if (shops.length === 0) return problem;
  const foodIds = [...new Set(problem.items.map(({ foodId }) => foodId))];
  const [onSale, places, homeMade] = await Promise.all([
    readOnSale(db, foodIds, on),
    readGroupPlaces(db),
    readHomeMade(db, foodIds),
  ]);
  const groupOf = new Map<string, string>(foods.map(({ id, group }) => [id, group]));
  const sellers = groupBy(onSale, ({ foodId }) => foodId);
  const sellersOfGroup = groupBy(places, ({ group }) => group);
  const shopsOf = (foodId: string): string[] => {
    if (homeMade.has(foodId)) return [];
    const rows = sellers.get(foodId) ?? sellersOfGroup.get(groupOf.get(foodId) ?? "") ?? [];
    const own = new Set(rows.map(({ shopId }) => shopId));
    return shops.filter(({ id }) => own.has(id)).map(({ id }) => id);
  };
  const known = new Map(foodIds.map((foodId) => [foodId, shopsOf(foodId)]));
  const ground = { places, shops };
  const wasteOf = new Map<string, number>(
    foods
      .filter(({ id }) => known.has(id) && !homeMade.has(id))
      .map((food) => {
        const sale = foodOnSale(food, { ...ground, onSale: sellers.get(food.id) ?? [] });
        return [food.id, likelyWasteCents(food, sale, problem.children.length)];
      }),
  );
  return {
    ...problem,
    shops: shops.map(({ id, name }) => ({ id, name, effort: 1 })),
    items: problem.items.map((item) => ({
      ...item,
      shopIds: known.get(item.foodId) ?? [],
      wasteCents: wasteOf.get(item.foodId) ?? 0,
    })),
  };
}
