import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { PLACES } from "#lib/shopping/index.ts";

const Grams = z
  .number({ error: "Write the grams as a number." })
  .positive({ error: "More than nothing, please." })
  .max(100_000, { error: "That is more than a kitchen holds." });
const UseBy = Day.nullable();
const Place = z.enum(PLACES, { error: "Choose where it is kept." });
/** The lot, and the grams the page showed: a second tab's change is noticed. */
const lot = { lotId: z.string().min(1).max(400), seenGrams: z.number().min(0) };

/** Something that happened to a lot, or a lot that came. */
export const ChangeStockInput = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("open"), ...lot }),
  z.object({ kind: z.literal("use"), ...lot, grams: Grams }),
  z.object({ kind: z.literal("throw"), ...lot, grams: Grams }),
  z.object({ kind: z.literal("freeze"), ...lot }),
  /** Counted or read anew: the amount, the date on the label, the place. */
  z.object({ kind: z.literal("count"), ...lot, grams: Grams, useBy: UseBy, place: Place }),
  z.object({
    kind: z.literal("add"),
    food: z.string().trim().min(1, { error: "Which food is it?" }).max(200),
    grams: Grams,
    useBy: UseBy,
    place: Place,
  }),
]);
export type ChangeStockInput = z.infer<typeof ChangeStockInput>;

/** A level for a staple; a use of zero takes it away. */
export const SaveParInput = z.object({
  food: z.string().trim().min(1, { error: "Which food is it?" }).max(200),
  gramsPerDay: z
    .number({ error: "Write the grams as a number." })
    .min(0, { error: "Nothing below zero." })
    .max(20_000, { error: "That is more than a family eats." }),
  leadDays: z
    .number({ error: "Write the days as a number." })
    .int({ error: "Whole days only." })
    .min(0, { error: "Nothing below zero." })
    .max(60, { error: "At most sixty days." }),
  reserveGrams: z
    .number({ error: "Write the grams as a number." })
    .min(0, { error: "Nothing below zero." })
    .max(100_000, { error: "That is more than a kitchen holds." }),
});
export type SaveParInput = z.infer<typeof SaveParInput>;
