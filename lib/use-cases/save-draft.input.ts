import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { DRAFT_KINDS } from "#lib/drafts/index.ts";

/** Which version of a piece the user has before them (0: none was kept yet). */
const revision = z.number().int().min(0);

const EpisodePiece = z.object({
  kind: z.enum(DRAFT_KINDS),
  monday: Day,
  lunchId: z.string().min(1).max(60).nullable(),
  revision,
});

/** A post of the board that is kept, by its id. */
export const BoardPiece = z.object({
  kind: z.literal("board"),
  post: z.string().min(1).max(60),
  revision,
});
export type BoardPiece = z.infer<typeof BoardPiece>;

/** Which piece is meant: one of an episode, or a post of the board. */
function piece<Shape extends z.ZodRawShape>(shape: Shape) {
  return z.discriminatedUnion("kind", [EpisodePiece.extend(shape), BoardPiece.extend(shape)]);
}

export const PieceInput = piece({});
export type PieceInput = z.infer<typeof PieceInput>;

/** A piece with the user's own words. */
export const SaveDraftInput = piece({
  body: z
    .string()
    .trim()
    .min(1, { error: "There is nothing to keep: write something, or go back to the draft." })
    .max(20_000, { error: "Keep it under 20,000 letters." }),
});
export type SaveDraftInput = z.infer<typeof SaveDraftInput>;

/** One finding of a guard: mended by one of its fixes, or kept as it is (`fix` null). */
export const SettleFindingInput = piece({
  key: z.string().min(1).max(21_000),
  fix: z.number().int().min(0).max(9).nullable(),
});
export type SettleFindingInput = z.infer<typeof SettleFindingInput>;

/** A stale piece brought up to date; one choice for each passage that both sides changed. */
export const UpdateDraftInput = piece({
  /** With the latest version of the template. */
  anew: z.boolean().default(false),
  choices: z.array(z.enum(["mine", "theirs", "both"])).max(200),
});
export type UpdateDraftInput = z.infer<typeof UpdateDraftInput>;
