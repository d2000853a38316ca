import { readFoods } from "#lib/db/index.ts";
import type { Context } from "./context.ts";

/** A food as the composer offers it. */
export type FoodChoice = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
};

/** Every food in use with its usual part and amount: one of it when it is counted, else its serving. */
export async function listFoods({ db }: Context): Promise<FoodChoice[]> {
  const foods = await readFoods(db);
  return foods.map((food) => ({
    id: food.id,
    name: food.name,
    aliases: food.aliases,
    part: food.parts[0] ?? "extra",
    amount: Math.round(food.servingGrams),
    unit: "g",
  }));
}
