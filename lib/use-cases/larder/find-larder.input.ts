import { z } from "zod";
import { COLOURS, FOOD_GROUPS } from "#lib/catalog/index.ts";

/** The ready-made views of the Larder's table. */
export const LARDER_VIEWS = ["in-use", "all", "soon", "season", "retired"] as const;
/** Standings the table can be narrowed to. */
export const STANDINGS = ["unmet", "meeting", "dependable", "mixed", "resting"] as const;
/** Weeks for "not on for". */
export const UNSEEN_WEEKS = [2, 4, 8, 13, 26, 52] as const;

const Word = z.string().trim().max(120).catch("");

/** The address of the Larder's table, read leniently: what makes no sense narrows nothing. */
export const FindLarderInput = z.object({
  q: Word.default(""),
  show: z.enum(LARDER_VIEWS).optional().catch(undefined),
  group: z.enum(FOOD_GROUPS).optional().catch(undefined),
  colour: z.enum(COLOURS).optional().catch(undefined),
  motif: Word.default(""),
  /** A child's id; empty: any child. */
  child: Word.default(""),
  standing: z.enum(STANDINGS).optional().catch(undefined),
  /** Weeks it has not been on for. */
  unseen: z.coerce.number().int().min(1).max(520).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(1000).default(1).catch(1),
});
export type FindLarderInput = z.infer<typeof FindLarderInput>;
