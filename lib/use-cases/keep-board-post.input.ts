import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { BoardPiece } from "./save-draft.input.ts";

const Id = z.string().min(1).max(120);

/** A post to be kept: its lunches, and the food it is about where it is about one. */
export const KeepPostInput = z.object({
  foodId: Id.nullable(),
  lunchIds: z
    .array(Id)
    .min(1, { error: "Choose a lunch first." })
    .max(60, { error: "Choose 60 lunches at most." }),
});
export type KeepPostInput = z.infer<typeof KeepPostInput>;

/** The day a post went out; null takes the mark back. */
export const PublishPostInput = BoardPiece.extend({ on: Day.nullable() });
export type PublishPostInput = z.infer<typeof PublishPostInput>;
