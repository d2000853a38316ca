import { readFoods, readTricks } from "#lib/db/index.ts";
import type { Context } from "./context.ts";

/** A food as the composer offers it: its usual part, and its serving as the amount. */
type FoodChoice = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
  readonly sliceable: boolean;
};

type TrickChoice = {
  readonly id: string;
  readonly name: string;
  readonly needsSliceable: boolean;
};

/** Every food in use, by name. */
async function listFoods({ db }: Context): Promise<FoodChoice[]> {
  const foods = await readFoods(db);
  return foods.map((food) => ({
    id: food.id,
    name: food.name,
    aliases: food.aliases,
    part: food.parts[0] ?? "extra",
    amount: Math.round(food.servingGrams),
    unit: "g",
    sliceable: food.sliceable,
  }));
}

/** The foods and tricks a lunch is composed of. */
export async function listChoices(
  context: Context,
): Promise<{ readonly foods: readonly FoodChoice[]; readonly tricks: readonly TrickChoice[] }> {
  const [foods, tricks] = await Promise.all([listFoods(context), readTricks(context.db)]);
  return {
    foods,
    tricks: tricks.map(({ id, name, needsSliceable }) => ({ id, name, needsSliceable })),
  };
}

type Named = { readonly id: string; readonly name: string };

/** The shops in use, nearest first, and the children by their on-screen names. */
export async function listHousehold({
  db,
}: Context): Promise<{ readonly shops: readonly Named[]; readonly people: readonly Named[] }> {
  const [shops, children] = await Promise.all([
    db.shop.findMany({ where: { retiredAt: null }, orderBy: { distanceOrder: "asc" } }),
    db.child.findMany({ where: { retiredAt: null }, orderBy: { position: "asc" } }),
  ]);
  return {
    shops: shops.map(({ id, name }) => ({ id, name })),
    people: children.map(({ id, onScreenName }) => ({ id, name: onScreenName })),
  };
}
