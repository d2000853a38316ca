import { z } from "zod";

const Words = z.string().trim().max(1000, { error: "Keep this under 1,000 letters." });

/** One entry from a phone about a filming day: only what it names is changed. */
export const KeepDayFactsInput = z.object({
  /** Made by the phone, so that an entry sent twice counts once. */
  id: z.uuid({ error: "This entry has no proper id." }),
  lunchId: z.string().min(1).max(60),
  /** Which phone, by an id it made for itself. */
  device: z.string().max(60),
  /** The revision the phone had seen; 0 when it had seen none. */
  baseRevision: z.number().int().min(0),
  madeAt: z.iso.datetime(),
  change: z
    .object({
      minutes: z
        .number({ error: "Write the minutes as a number." })
        .min(0, { error: "Minutes cannot be below zero." })
        .max(600, { error: "That is more than a morning." })
        .nullable(),
      hard: Words,
      pickups: Words,
    })
    .partial()
    .refine((change) => Object.keys(change).length > 0, { error: "This entry changes nothing." }),
});
export type KeepDayFactsInput = z.infer<typeof KeepDayFactsInput>;
