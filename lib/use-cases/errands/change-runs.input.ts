import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";

const Id = z.string().min(1).max(400);
const trip = { monday: Day, shopId: z.string().min(1).max(60), day: Day };
const Packs = z
  .number({ error: "Write the packs as a number." })
  .int({ error: "Whole packs only." })
  .min(1, { error: "One pack or more." })
  .max(500, { error: "That is more than a kitchen holds." });

/** A decision about a week's runs that sticks. */
export const ChangeRunsInput = z.discriminatedUnion("kind", [
  /** This trip is made in any case. */
  z.object({ kind: z.literal("go"), ...trip }),
  /** This trip is not made. */
  z.object({ kind: z.literal("stay-away"), ...trip }),
  /** Neither: the plan decides again. */
  z.object({ kind: z.literal("leave-open"), ...trip }),
  z.object({ kind: z.literal("done"), ...trip, isDone: z.boolean() }),
  /** A food is bought only at this shop, in every week; an empty shop takes that back. */
  z.object({
    kind: z.literal("only-at"),
    monday: Day,
    foodId: z.string().min(1).max(120),
    shopId: z.string().max(60),
  }),
  /** So many packs of a planned line, on this trip, whatever the plan would do. */
  z.object({ kind: z.literal("fix-line"), ...trip, lineId: Id, packs: Packs }),
  /** A line fixed or added by hand is given back to the plan, or goes. */
  z.object({ kind: z.literal("free-line"), monday: Day, lineId: Id }),
  z.object({
    kind: z.literal("add-line"),
    ...trip,
    label: z
      .string()
      .trim()
      .min(1, { error: "Write what to buy." })
      .max(200, { error: "Keep it under 200 letters." }),
    packs: Packs,
  }),
]);
export type ChangeRunsInput = z.infer<typeof ChangeRunsInput>;
