import type { Food } from "#lib/catalog/index.ts";
import type { FoodFields } from "./food.input.ts";

/** A number as a field shows it; empty where there is none. */
export function text(value: number | null): string {
  return value === null ? "" : String(value);
}

/** A food as its form shows it. */
export function fieldsOf(
  food: Food,
  { revision, ingredients }: { readonly revision: number; readonly ingredients: string },
): FoodFields {
  const [part = "extra", ...otherParts] = food.parts;
  const [colour = "cream", ...otherColours] = food.colours;
  const { shelf } = food;
  return {
    ...{ id: food.id, revision, name: food.name, aliases: food.aliases.join("\n") },
    ...{ familyId: food.family, newFamily: "", group: food.group, part, otherParts },
    ...{ allergens: food.allergens, maybe: food.maybeAllergens, traits: food.traits },
    ...{ colour, otherColours, motifs: food.motifs.join(", "), pattern: food.pattern },
    ...{ form: food.form, holding: food.holding, sliceable: food.sliceable },
    isStaple: food.isStaple,
    months: (food.seasonMonths ?? []).map(String),
    pantryDays: text(shelf.pantryDays),
    pantryOpenedDays: text(shelf.pantryOpenedDays),
    fridgeDays: text(shelf.fridgeDays),
    fridgeOpenedDays: text(shelf.fridgeOpenedDays),
    cutDays: text(shelf.cutDays),
    preparedDays: text(shelf.preparedDays),
    freezerDays: text(shelf.freezerDays),
    yieldFactor: text(food.yieldFactor),
    servingGrams: text(food.servingGrams),
    gramsPerCup: text(food.gramsPerCup),
    countUnit: food.countUnit ?? "",
    unitWeights: Object.entries(food.unitWeights)
      .map(([unit, grams]) => `${unit} ${grams}`)
      .join("\n"),
    servingMoney: (food.servingCents / 100).toFixed(2),
    restDays: text(food.restDays),
    ingredients,
  };
}
