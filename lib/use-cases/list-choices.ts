import { readFoods, readTricks } from "#lib/db/index.ts";
import type { Context } from "./context.ts";

/** A food as the composer offers it: its usual part, and its serving as the amount. */
export type FoodChoice = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
  readonly sliceable: boolean;
};

export type ComposerChoices = {
  readonly foods: readonly FoodChoice[];
  readonly tricks: readonly {
    readonly id: string;
    readonly name: string;
    readonly needsSliceable: boolean;
  }[];
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  readonly people: readonly { readonly id: string; readonly name: string }[];
};

/** Every food in use, by name. */
export async function listFoods({ db }: Context): Promise<FoodChoice[]> {
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

/** Everything a lunch is composed of: foods, tricks, shops, and the children by their on-screen names. */
export async function listChoices(context: Context): Promise<ComposerChoices> {
  const { db } = context;
  const [foods, tricks, shops, children] = await Promise.all([
    listFoods(context),
    readTricks(db),
    db.shop.findMany({ where: { retiredAt: null }, orderBy: { distanceOrder: "asc" } }),
    db.child.findMany({ where: { retiredAt: null }, orderBy: { position: "asc" } }),
  ]);
  return {
    foods,
    tricks: tricks.map(({ id, name, needsSliceable }) => ({ id, name, needsSliceable })),
    shops: shops.map(({ id, name }) => ({ id, name })),
    people: children.map(({ id, onScreenName }) => ({ id, name: onScreenName })),
  };
}
