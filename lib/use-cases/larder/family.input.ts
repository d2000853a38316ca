import { z } from "zod";
import { typedNumber } from "./typed.ts";

/** What a family of foods is called and how long it rests. */
export const FamilyInput = z.object({
  familyId: z.string().min(1).max(120),
  name: z
    .string()
    .trim()
    .min(1, { error: "Give the family a name." })
    .max(120, { error: "Keep the name under 120 letters." }),
  /** Empty: the series' rule for families. */
  restDays: typedNumber({ min: 0, max: 366, whole: true }),
});
export type FamilyInput = z.infer<typeof FamilyInput>;
export type FamilyFields = z.input<typeof FamilyInput>;
