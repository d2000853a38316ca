import { z } from "zod";
import { Part } from "#lib/catalog/index.ts";

const Amount = z
  .number({ error: "Write the amount as a number." })
  .max(5000, { error: "That is more than a lunch tin holds." });

const Item = z.object({
  /** The item as it is stored; empty for one that is new. */
  id: z.string().max(60).default(""),
  foodId: z.string().min(1, { error: "Choose a food." }).max(120),
  part: Part,
  amount: Amount.positive({ error: "The amount must be above zero." }),
  unit: z.string().trim().min(1, { error: "Say the unit, such as g or piece." }).max(40),
  shopId: z.string().max(60).default(""),
  trickIds: z.array(z.string().max(120)).max(6).default([]),
  /** Where one child's amount differs; 0: not for this child. */
  shares: z
    .array(
      z.object({
        childId: z.string().min(1).max(60),
        amount: Amount.min(0, { error: "An amount cannot be below zero." }),
      }),
    )
    .max(12)
    .default([]),
});

/** A lunch as composed: all its items in order, and the revision the page was opened with. */
export const SaveLunchInput = z.object({
  lunchId: z.string().min(1).max(60),
  revision: z.number().int().min(1),
  angle: z.string().trim().max(120, { error: "Keep the angle under 120 letters." }),
  items: z.array(Item).max(20, { error: "A tin holds 20 things at most." }),
});
export type SaveLunchInput = z.infer<typeof SaveLunchInput>;
