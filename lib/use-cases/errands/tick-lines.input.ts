import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";

const Cents = z
  .number({ error: "Write the price as a number." })
  .int()
  .min(0, { error: "A price cannot be below zero." })
  .max(10_000_000, { error: "That is more than any shop asks." });

/** What one device changed, line by line; stamps say which change is the later. */
export const TickLinesInput = z.object({
  monday: Day,
  ticks: z
    .array(
      z.object({
        lineId: z.string().min(1).max(400),
        shopId: z.string().min(1).max(60),
        day: Day,
        state: z.enum(["open", "bought", "none-left", "dropped"]),
        packs: z.number().int().min(1, { error: "One pack or more." }).max(500),
        paidCents: Cents.nullable(),
        stamp: z.string().regex(/^\d{12}:[\w-]{1,40}$/),
      }),
    )
    .min(1)
    .max(300),
});
export type TickLinesInput = z.infer<typeof TickLinesInput>;
