import { z } from "zod";

const Words = z.string().trim().max(1000, { error: "Keep this under 1,000 letters." });

/** The quick facts of a filming day. */
export const SaveDayFactsInput = z.object({
  lunchId: z.string().min(1).max(60),
  /** The revision the page had seen. */
  revision: z.number().int().min(0),
  minutes: z
    .number({ error: "Write the minutes as a number." })
    .min(0, { error: "Minutes cannot be below zero." })
    .max(600, { error: "That is more than a morning." })
    .nullable(),
  hard: Words,
  /** Shots the camera missed, to be picked up later. */
  pickups: Words,
});
export type SaveDayFactsInput = z.infer<typeof SaveDayFactsInput>;
