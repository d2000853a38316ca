import { z } from "zod";

/** A finding to keep with a note, or to take up again. */
export const KeepFindingInput = z.object({
  lunchId: z.string().min(1).max(60),
  key: z.string().min(1).max(2000),
  note: z
    .string()
    .trim()
    .min(1, { error: "Say in a few words why it may stay." })
    .max(300, { error: "Keep it under 300 letters." })
    .nullable(),
});
export type KeepFindingInput = z.infer<typeof KeepFindingInput>;
