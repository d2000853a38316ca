import { z } from "zod";

/** A whole lunch typed as one line. */
export const QuickLineInput = z.object({
  line: z
    .string()
    .trim()
    .min(1, { error: "Type what is in the lunch." })
    .max(600, { error: "Keep the line under 600 letters." }),
});
export type QuickLineInput = z.infer<typeof QuickLineInput>;

/** A corrected match: this phrase means that food. */
export const TeachAliasInput = z.object({
  foodId: z.string().min(1).max(120),
  phrase: z.string().trim().min(1).max(200),
});
export type TeachAliasInput = z.infer<typeof TeachAliasInput>;
