import { z } from "zod";
import { Appliance } from "#lib/catalog/index.ts";
import { neededNumber, typedNumber } from "./typed.ts";

/** What getting a food ready asks for, as it is typed on its page; the order is the kitchen's. */
export const StepsInput = z.object({
  foodId: z.string().min(1).max(120),
  revision: z.number().int().min(1),
  steps: z
    .array(
      z.object({
        name: z
          .string()
          .trim()
          .min(1, { error: "Say what is done, or take the step out." })
          .max(120, { error: "Keep it under 120 letters." }),
        minutes: neededNumber({ min: 0, max: 1440 }, "Say how many minutes."),
        isByHand: z.boolean(),
        appliance: Appliance,
        earliest: z.enum(["evening", "morning"]),
        /** Empty: it keeps until packing however early it is done. */
        keepsMinutes: typedNumber({ min: 0, max: 10_080 }),
        isAlongside: z.boolean(),
      }),
    )
    .max(20, { error: "Twenty steps are enough." }),
});
export type StepsInput = z.infer<typeof StepsInput>;
export type StepsFields = z.input<typeof StepsInput>;
