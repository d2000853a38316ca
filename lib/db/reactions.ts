import { z } from "zod";
import type { Db } from "./client.ts";

/** The verdict that stands on an item for a child, as far as a new entry must know it. */
export type StandingVerdict = {
  readonly revision: number;
  readonly eaten: number | null;
  readonly face: number | null;
  readonly quote: string;
  readonly note: string;
};

export type EntryGround = {
  readonly isKnown: boolean;
  /** Undefined when the item or the child is gone. */
  readonly fate: string | undefined;
  readonly standing: StandingVerdict | undefined;
};

const GroundRow = z.object({
  known: z.number(),
  fate: z.string().nullable(),
  child: z.string().nullable(),
  revision: z.number().nullable(),
  eaten: z.number().nullable(),
  face: z.number().nullable(),
  quote: z.string().nullable(),
  note: z.string().nullable(),
});

/** Everything an entry must know before it is applied, in one statement: it is on the hot path. */
export async function readEntryGround(
  db: Db,
  entry: { readonly id: string; readonly itemId: string; readonly childId: string },
): Promise<EntryGround> {
  const rows = await db.$queryRaw<unknown[]>`
    SELECT EXISTS (SELECT 1 FROM "ReactionEvent" WHERE "id" = ${entry.id}) AS known,
           i."fate", c."id" AS child, r."revision", r."eaten", r."face", r."quote", r."note"
    FROM (SELECT 1)
    LEFT JOIN "LunchItem" i ON i."id" = ${entry.itemId}
    LEFT JOIN "Child" c ON c."id" = ${entry.childId}
    LEFT JOIN "Reaction" r ON r."itemId" = i."id" AND r."childId" = c."id"`;
  const row = GroundRow.parse(
    JSON.parse(
      JSON.stringify(rows[0], (_, value: unknown) =>
        typeof value === "bigint" ? Number(value) : value,
      ),
    ),
  );
  const { revision, eaten, face, quote, note } = row;
  return {
    isKnown: row.known === 1,
    fate: row.child === null ? undefined : (row.fate ?? undefined),
    standing:
      revision === null
        ? undefined
        : { revision, eaten, face, quote: quote ?? "", note: note ?? "" },
  };
}

/** One entry as it is kept: what the phone sent, and which fields of the verdict it sets. */
export type Entry = {
  readonly id: string;
  readonly itemId: string;
  readonly childId: string;
  readonly baseRevision: number;
  readonly madeAt: Date;
  readonly change: Partial<Omit<StandingVerdict, "revision">>;
};

/** Keeps an entry under its own id: the history of amendments. Plain SQL, for the hot path. */
export async function keepEntry(db: Db, entry: Entry, now: Date): Promise<void> {
  const changeJson = JSON.stringify(entry.change);
  await db.$executeRaw`
    INSERT INTO "ReactionEvent"
      ("id", "itemId", "childId", "changeJson", "baseRevision", "device", "madeAt", "appliedAt")
    VALUES (${entry.id}, ${entry.itemId}, ${entry.childId}, ${changeJson}, ${entry.baseRevision}, '',
            ${entry.madeAt}, ${now})`;
}

/** Sets the verdict to what stands after an entry: all of its fields, and its new revision. */
export async function writeVerdict(db: Db, entry: Entry, verdict: StandingVerdict): Promise<void> {
  const { eaten, face, quote, note, revision } = verdict;
  await db.$executeRaw`
    INSERT INTO "Reaction"
      ("itemId", "childId", "eaten", "face", "quote", "note", "loggedAt", "revision")
    VALUES (${entry.itemId}, ${entry.childId}, ${eaten}, ${face}, ${quote}, ${note}, ${entry.madeAt},
            ${revision})
    ON CONFLICT ("itemId", "childId") DO UPDATE SET
      "eaten" = excluded."eaten", "face" = excluded."face", "quote" = excluded."quote",
      "note" = excluded."note", "loggedAt" = excluded."loggedAt", "revision" = excluded."revision"`;
}

/** Keeps the other phone's values beside the verdict until the user chooses. */
export async function noteConflict(db: Db, entry: Entry, revision: number): Promise<void> {
  const conflictJson = JSON.stringify({ entry: entry.id, ...entry.change });
  await db.reaction.updateMany({
    where: { itemId: entry.itemId, childId: entry.childId },
    data: { conflictJson, revision },
  });
}
