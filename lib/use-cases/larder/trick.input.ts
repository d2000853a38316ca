import { z } from "zod";
import { Colour, TrickKind } from "#lib/catalog/index.ts";
import { neededNumber, slugsOf } from "./typed.ts";

/** A trick as it is typed. */
export const TrickInput = z.object({
  /** Empty for a trick that is added. */
  id: z.string().max(120),
  /** When it was edited last, as the page knew it; empty: never. */
  editedAt: z.string().max(40),
  name: z
    .string()
    .trim()
    .min(1, { error: "Give the trick a name." })
    .max(120, { error: "Keep the name under 120 letters." }),
  kind: TrickKind,
  motifs: z.string().max(500, { error: "That is too long." }).transform(slugsOf),
  colours: z.array(Colour),
  minutes: neededNumber({ min: 0, max: 120 }, "Say how many minutes it adds; 0 is fine."),
  needsSliceable: z.boolean(),
});
export type TrickInput = z.infer<typeof TrickInput>;
export type TrickFields = z.input<typeof TrickInput>;
