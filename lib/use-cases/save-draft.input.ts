import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { DRAFT_KINDS } from "#lib/drafts/index.ts";

/** Which piece is meant, and which of its versions the user has before them (0: none was kept yet). */
export const PieceInput = z.object({
  monday: Day,
  kind: z.enum(DRAFT_KINDS),
  lunchId: z.string().min(1).max(60).nullable(),
  revision: z.number().int().min(0),
});
export type PieceInput = z.infer<typeof PieceInput>;

/** A piece with the user's own words. */
export const SaveDraftInput = PieceInput.extend({
  body: z
    .string()
    .trim()
    .min(1, { error: "There is nothing to keep: write something, or go back to the draft." })
    .max(20_000, { error: "Keep it under 20,000 letters." }),
});
export type SaveDraftInput = z.infer<typeof SaveDraftInput>;

/** One finding of a guard: mended by one of its fixes, or kept as it is (`fix` null). */
export const SettleFindingInput = PieceInput.extend({
  key: z.string().min(1).max(21_000),
  fix: z.number().int().min(0).max(9).nullable(),
});
export type SettleFindingInput = z.infer<typeof SettleFindingInput>;

/** A stale piece brought up to date; one choice for each passage that both sides changed. */
export const UpdateDraftInput = PieceInput.extend({
  /** With the latest version of the template. */
  anew: z.boolean().default(false),
  choices: z.array(z.enum(["mine", "theirs", "both"])).max(200),
});
export type UpdateDraftInput = z.infer<typeof UpdateDraftInput>;
