import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { Allergen, Trait } from "#lib/catalog/index.ts";
import { neededNumber, typedMoney } from "./typed.ts";

/** How a product came into the house; all but "bought" must be told to viewers. */
export const PROVENANCES = ["bought", "gifted", "sponsored", "affiliate"] as const;
/** Whether the shops have it. */
export const PRODUCT_STATUSES = ["available", "out", "discontinued"] as const;

const Sold = z.object({
  shopId: z.string().min(1).max(60),
  isSold: z.boolean(),
  aisle: z.string().trim().max(80, { error: "Keep the aisle under 80 letters." }),
  onlyThere: z.boolean(),
  /** A price seen today or on `priceOn`; empty: none is added. */
  price: typedMoney,
});

/** A product as it is typed under its food. */
export const ProductInput = z
  .object({
    /** Empty for a product that is added. */
    id: z.string().max(60),
    foodId: z.string().min(1).max(120),
    revision: z.number().int().min(0),
    name: z
      .string()
      .trim()
      .min(1, { error: "Give the product a name." })
      .max(120, { error: "Keep the name under 120 letters." }),
    flavour: z.string().trim().max(80, { error: "Keep the flavour under 80 letters." }),
    packGrams: neededNumber({ min: 1, max: 50_000 }, "Say what a pack weighs in grams."),
    months: z.array(z.coerce.number().int().min(1).max(12)),
    provenance: z.enum(PROVENANCES),
    disclosure: z.string().trim().max(300, { error: "Keep it under 300 letters." }),
    allergens: z.array(Allergen),
    maybe: z.array(Allergen),
    traits: z.array(Trait),
    status: z.enum(PRODUCT_STATUSES),
    shops: z.array(Sold).max(60),
    priceOn: z.union([z.literal(""), Day]),
  })
  .refine(({ provenance, disclosure }) => provenance === "bought" || disclosure !== "", {
    error: "Write the sentence that tells viewers, such as: The crackers were a gift.",
    path: ["disclosure"],
  });
export type ProductInput = z.infer<typeof ProductInput>;
export type ProductFields = z.input<typeof ProductInput>;
