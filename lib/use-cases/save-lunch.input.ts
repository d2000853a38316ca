import { z } from "zod";
import { Part } from "#lib/catalog/index.ts";

const Item = z.object({
  foodId: z.string().min(1, { error: "Choose a food." }).max(120),
  part: Part,
  amount: z
    .number({ error: "Write the amount as a number." })
    .positive({ error: "The amount must be above zero." })
    .max(5000, { error: "That is more than a lunch tin holds." }),
  unit: z.string().trim().min(1, { error: "Say the unit, such as g or piece." }).max(40),
  trickIds: z.array(z.string().max(120)).max(6).default([]),
});

/** A lunch as composed: all its items in order, and the revision the page was opened with. */
export const SaveLunchInput = z.object({
  lunchId: z.string().min(1).max(60),
  revision: z.number().int().min(1),
  angle: z.string().trim().max(120, { error: "Keep the angle under 120 letters." }),
  items: z.array(Item).max(20, { error: "A tin holds 20 things at most." }),
});
export type SaveLunchInput = z.infer<typeof SaveLunchInput>;
