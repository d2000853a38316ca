import { z } from "zod";

export const TickStepInput = z.object({
  lunchId: z.string().min(1).max(60),
  stepKey: z.string().min(1).max(300),
  isDone: z.boolean(),
  /** Minutes it took; null: not said. */
  minutes: z
    .number({ error: "Write the minutes as a number." })
    .min(0, { error: "Minutes cannot be below zero." })
    .max(1440, { error: "That is more than a day." })
    .nullable(),
});
export type TickStepInput = z.infer<typeof TickStepInput>;
