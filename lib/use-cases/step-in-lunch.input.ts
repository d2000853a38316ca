import { z } from "zod";
import { Part } from "#lib/catalog/index.ts";

/** The foods of a lunch that stood ready, and why they are needed. */
export const StepInLunchInput = z.object({
  lunchId: z.string().min(1).max(60),
  foods: z
    .array(z.object({ foodId: z.string().min(1).max(120), part: Part }))
    .min(1)
    .max(8),
  reason: z
    .string()
    .trim()
    .min(1, { error: "Say why in a few words: the description may need it." })
    .max(300, { error: "Keep the reason under 300 letters." }),
});
export type StepInLunchInput = z.infer<typeof StepInLunchInput>;
