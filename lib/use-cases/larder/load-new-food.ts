import { readSettings } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { FoodFields } from "./food.input.ts";

/** What the form of a new food begins with: a name, perhaps, and careful guesses. */
export async function loadNewFood(
  { db }: Context,
  name: string,
): Promise<{
  readonly standing: FoodFields;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly currency: string;
}> {
  const [families, { currency }] = await Promise.all([
    db.family.findMany({ select: { id: true, name: true }, orderBy: { name: "asc" } }),
    readSettings(db),
  ]);
  return { standing: { ...UNKNOWN, name }, families, currency };
}

/** A food nothing is known of: one serving is 80 g (common practice), all of it eaten, kept cold. */
const UNKNOWN: FoodFields = {
  ...{ id: "", revision: 0, name: "", aliases: "", familyId: "", newFamily: "" },
  ...{ group: "vegetable", part: "vegetable", otherParts: [], allergens: [], maybe: [] },
  ...{ traits: [], colour: "cream", otherColours: [], motifs: "", pattern: "plain" },
  ...{ form: "soft", holding: "cold", sliceable: false, isStaple: false, months: [] },
  ...{ pantryDays: "", pantryOpenedDays: "", fridgeDays: "", fridgeOpenedDays: "" },
  ...{ cutDays: "", preparedDays: "", freezerDays: "", yieldFactor: "1", servingGrams: "80" },
  ...{ gramsPerCup: "", countUnit: "", unitWeights: "", servingMoney: "", restDays: "" },
  ...{ ingredients: "" },
};
