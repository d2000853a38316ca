import type { FoodToBuy, Lot } from "#lib/shopping/index.ts";
import type { Food, FoodId } from "#lib/catalog/index.ts";

/** Lives of a food nobody has stated any for. */
export const NO_LIVES: Food["shelf"] = {
  pantryDays: null,
  pantryOpenedDays: null,
  fridgeDays: null,
  fridgeOpenedDays: null,
  cutDays: null,
  preparedDays: null,
  freezerDays: null,
};

/** A food to buy with only what a test speaks of. */
export function food(name: string, own: Partial<Omit<FoodToBuy, "name" | "id">> = {}): FoodToBuy {
  return {
    id: name.replaceAll(" ", "-") as FoodId,
    name,
    yieldFactor: 1,
    gramsPerCup: null,
    unitWeights: {},
    servingGrams: 100,
    countUnit: null,
    shelf: NO_LIVES,
    ...own,
  };
}

/** A lot of 100 g in the refrigerator with only what a test speaks of. */
export function lot(id: string, own: Partial<Lot> = {}): Lot {
  return {
    id,
    foodId: "hummus",
    productId: null,
    grams: 100,
    boughtOn: null,
    openedOn: null,
    cutOn: null,
    preparedOn: null,
    useBy: null,
    place: "fridge",
    ...own,
  };
}
