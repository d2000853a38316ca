import { z } from "zod";
import type { Day } from "#lib/calendar/index.ts";
import { parseColumn, type Db } from "#lib/db/index.ts";
import type { VerdictConflict } from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import type { VerdictState } from "./log-reaction.ts";

const Conflicts = z.array(
  z.object({
    field: z.enum(["eaten", "face", "quote", "note"]),
    said: z.array(
      z.object({
        value: z.union([z.number(), z.string(), z.null()]),
        device: z.string(),
        madeAt: z.string(),
      }),
    ),
  }),
);

/** The verdicts of a day as they stand, for a phone that looks again; none when nothing was packed. */
export async function loadVerdictCells({ db }: Context, date: Day): Promise<VerdictState[]> {
  const items = await db.lunchItem.findMany({ where: { lunch: { date } }, select: { id: true } });
  return readVerdictCells(
    db,
    items.map(({ id }) => id),
  );
}

/** The verdicts on some items as they stand. */
export async function readVerdictCells(
  db: Db,
  itemIds: readonly string[],
): Promise<VerdictState[]> {
  const rows = await db.reaction.findMany({ where: { itemId: { in: [...itemIds] } } });
  return rows.map(({ itemId, childId, revision, eaten, face, quote, note, conflictJson }) => ({
    ...{ itemId, childId, revision, values: { eaten, face, quote, note } },
    conflicts: readConflicts(conflictJson),
  }));
}

function readConflicts(text: string | null): readonly VerdictConflict[] {
  // An earlier version kept one entry here instead of a list; its value is in the history.
  if (text === null || !text.startsWith("[")) return [];
  return parseColumn(Conflicts, text, "Reaction.conflict");
}
