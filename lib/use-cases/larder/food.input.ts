import { z } from "zod";
import {
  Allergen,
  Colour,
  FoodGroup,
  Form,
  Holding,
  Part,
  Pattern,
  Trait,
} from "#lib/catalog/index.ts";
import { linesOf, neededNumber, slugsOf, typedMoney, typedNumber } from "./typed.ts";

const Name = z.string().trim().max(120, { error: "Keep the name under 120 letters." });
const Text = z.string().max(2000, { error: "That is too long." });
const Days = typedNumber({ min: 0, max: 3650, whole: true });
const Month = z.coerce.number().int().min(1).max(12);

/** "slice 30", one a line: what one of a unit weighs in grams. */
const UnitWeights = Text.transform((text, context): Record<string, number> => {
  const weights: Record<string, number> = {};
  for (const line of linesOf(text)) {
    const found = /^(.{1,40}?)[\s:=]+(\d+(?:[.,]\d+)?)\s*g?$/.exec(line);
    const grams = Number(found?.[2]?.replace(",", "."));
    const unit = found?.[1]?.trim();
    if (unit !== undefined && grams > 0 && grams <= 5000) weights[unit] = grams;
    else {
      const message = `“${line.slice(0, 40)}” is not understood. Write a unit and its grams, such as: slice 30`;
      context.addIssue({ code: "custom", message });
      return z.NEVER;
    }
  }
  return weights;
});

/** Longest list of ingredients, in letters. */
const INGREDIENTS_MOST = 4000;
/** A food as it is typed on its page; what it becomes is checked and in the domain's own words. */
export const FoodInput = z
  .object({
    /** Empty for a food that is added. */
    id: z.string().max(120),
    revision: z.number().int().min(0),
    name: Name.min(1, { error: "Give the food a name." }),
    aliases: Text.transform(linesOf).pipe(
      z.array(Name).max(40, { error: "Forty other names are enough." }),
    ),
    familyId: z.string().max(120),
    newFamily: Name,
    group: FoodGroup,
    part: Part,
    otherParts: z.array(Part),
    allergens: z.array(Allergen),
    maybe: z.array(Allergen),
    traits: z.array(Trait),
    colour: Colour,
    otherColours: z.array(Colour),
    motifs: Text.transform(slugsOf),
    pattern: Pattern,
    form: Form,
    holding: Holding,
    sliceable: z.boolean(),
    isStaple: z.boolean(),
    /** None ticked: all year. */
    months: z.array(Month),
    pantryDays: Days,
    pantryOpenedDays: Days,
    fridgeDays: Days,
    fridgeOpenedDays: Days,
    cutDays: Days,
    preparedDays: Days,
    freezerDays: Days,
    yieldFactor: neededNumber({ min: 0.05, max: 8 }, "Say which share of it is eaten: 1 is all."),
    servingGrams: neededNumber({ min: 1, max: 2000 }, "Say what a serving weighs in grams."),
    gramsPerCup: typedNumber({ min: 1, max: 2000 }),
    countUnit: z.string().trim().max(40, { error: "Keep the unit under 40 letters." }),
    unitWeights: UnitWeights,
    servingMoney: typedMoney,
    restDays: typedNumber({ min: 0, max: 366, whole: true }),
    ingredients: z
      .string()
      .trim()
      .max(INGREDIENTS_MOST, { error: `Keep the ingredients under ${INGREDIENTS_MOST} letters.` }),
  })
  .refine(({ familyId, newFamily }) => familyId !== "" || newFamily !== "", {
    error: "Choose a family, or name a new one.",
    path: ["familyId"],
  });
export type FoodInput = z.infer<typeof FoodInput>;
export type FoodFields = z.input<typeof FoodInput>;
