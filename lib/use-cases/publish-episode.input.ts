import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";

/** Where and when an episode was published; without an address: not published after all. */
export const PublishInput = z.object({
  monday: Day,
  revision: z.number().int().min(0),
  on: Day,
  url: z
    .string()
    .trim()
    .max(500, { error: "Keep the address under 500 letters." })
    .refine((text) => text === "" || /^https?:\/\/\S+\.\S+$/u.test(text), {
      error: "An address begins with https:// and has no spaces.",
    }),
});
export type PublishInput = z.infer<typeof PublishInput>;

/** A promise ticked as kept, or opened again. */
export const KeepPromiseInput = z.object({
  id: z.string().min(1).max(60),
  isKept: z.boolean(),
});
export type KeepPromiseInput = z.infer<typeof KeepPromiseInput>;
