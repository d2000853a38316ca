import { expect, test } from "vitest";
import { fractionOf } from "#lib/base/index.ts";
import { likelyWasteCents } from "#lib/use-cases/likely-waste.ts";
import { foodOnSale } from "#lib/use-cases/errands/offers.ts";
import { referenceCatalogue } from "#seed/index.ts";

const { foods } = referenceCatalogue();

function foodNamed(id: string) {
  const food = foods.map((one) => one.food).find((one) => one.id === id);
  if (!food) throw new Error(`no ${id} in the catalogue`);
  return { ...food, servingGrams: 50, yieldFactor: 1 };
}

/** A pack of so many grams for 300 cents. */
function packOf(food: ReturnType<typeof foodNamed>, ...grams: number[]) {
  const base = foodOnSale(food, { onSale: [], places: [], shops: [] });
  const offers = grams.map((weight) => ({
    ...{ productId: `p${weight}`, name: "a pack", packWord: "pack", shopId: "s" },
    ...{ packGrams: fractionOf(weight), priceCents: 300 },
  }));
  return { ...base, offers };
}

test("a third of what the most fitting pack leaves over counts, where it does not keep", () => {
  const food = foodNamed("strawberries");
  // Two children eat 100 g of 150 g for 300 cents: 50 g are left, worth 100 cents.
  expect(likelyWasteCents(food, packOf(food, 150), 2)).toBeCloseTo(100 / 3, 9);
  // Two packs of 75 g for three children leave nothing.
  expect(likelyWasteCents(food, packOf(food, 150, 75), 3)).toBeCloseTo(0, 9);
  expect(likelyWasteCents(food, packOf(food), 2)).toBe(0);
});

test("what keeps for weeks once opened wastes nothing", () => {
  const food = { ...foodNamed("strawberries"), shelf: foodNamed("pretzels").shelf };
  expect(likelyWasteCents(food, packOf(food, 1000), 2)).toBe(0);
});
