import { z } from "zod";

/** One entry from a phone: only what it names is changed. */
export const LogReactionInput = z.object({
  /** Made by the phone, so that an entry sent twice counts once. */
  id: z.uuid({ error: "This entry has no proper id." }),
  itemId: z.string().min(1).max(60),
  childId: z.string().min(1).max(60),
  /** Which phone, by an id it made for itself. */
  device: z.string().max(60),
  /** The revision the phone had seen; 0 when it had seen none. */
  baseRevision: z.number().int().min(0),
  madeAt: z.iso.datetime(),
  change: z
    .object({
      eaten: z.number().int().min(0).max(4).nullable(),
      face: z.number().min(0).max(100).nullable(),
      quote: z.string().trim().max(500, { error: "Keep the quote under 500 letters." }),
      note: z.string().trim().max(1000, { error: "Keep the note under 1,000 letters." }),
    })
    .partial()
    .refine((change) => Object.keys(change).length > 0, { error: "This entry changes nothing." }),
});
export type LogReactionInput = z.infer<typeof LogReactionInput>;
