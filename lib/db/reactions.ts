import { z } from "zod";
import type { VerdictConflict, VerdictEntry, VerdictFields } from "#lib/reactions/index.ts";
import type { Statement } from "./at-once.ts";
import { parseColumn } from "./json.ts";

/** Everything an entry must know before it is applied. */
export type EntryGround = {
  readonly isKnown: boolean;
  /** Undefined when the item or the child is gone. */
  readonly fate: string | undefined;
  /** Entries applied to the child and item so far; 0 when nothing was said. */
  readonly revision: number;
  /** The entries on record, in order of arrival. */
  readonly entries: readonly VerdictEntry[];
  /** Stands for what a verdict said before its first entry; not on record yet. */
  readonly start: VerdictEntry | undefined;
};

/** An entry as it is kept. */
export type Entry = Omit<VerdictEntry, "revision"> & {
  readonly itemId: string;
  readonly childId: string;
};

const Change = z
  .object({
    eaten: z.number().nullable(),
    face: z.number().nullable(),
    quote: z.string(),
    note: z.string(),
  })
  .partial();
const Kept = z.tuple([z.string(), z.string(), z.string(), z.number(), z.string()]);
const GroundRow = z.object({
  known: z.coerce.number(),
  fate: z.string().nullable(),
  child: z.string().nullable(),
  revision: z.coerce.number(),
  kept: z.string(),
  /** The verdict as it stood before its first entry: one that came without, from a file or the demo. */
  start: z.string().nullable(),
});

type Asked = { readonly id: string; readonly itemId: string; readonly childId: string };

/** What reads the ground of an entry, in one statement: it is on the hot path. */
const GROUND = `
    SELECT EXISTS (SELECT 1 FROM "ReactionEvent" WHERE "id" = ?1) AS known,
           i."fate", c."id" AS child, coalesce(r."revision", 0) AS revision,
           (SELECT json_group_array(json_array(e."id", e."device", e."madeAt", e."baseRevision", e."changeJson"))
            FROM (SELECT * FROM "ReactionEvent" WHERE "itemId" = i."id" AND "childId" = c."id"
                  ORDER BY rowid) e) AS kept,
           json_object('eaten', r."eaten", 'face', r."face", 'quote', r."quote", 'note', r."note",
                       'loggedAt', r."loggedAt") AS start
    FROM (SELECT 1)
    LEFT JOIN "LunchItem" i ON i."id" = ?2
    LEFT JOIN "Child" c ON c."id" = ?3
    LEFT JOIN "Reaction" r ON r."itemId" = i."id" AND r."childId" = c."id"`;

/** The statement that answers `groundOf`. */
export function groundStatement({ id, itemId, childId }: Asked): Statement {
  return { sql: GROUND, cells: [id, itemId, childId] };
}

/** The ground of an entry from the rows of its statement. */
export function groundOf(rows: readonly unknown[], entry: Asked): EntryGround {
  const { known, fate, child, revision, kept, start } = GroundRow.parse(rows[0]);
  const events = z.array(Kept).parse(JSON.parse(kept));
  // Each entry raised the revision by one.
  const first = revision - events.length + 1;
  const entries = events.map(([id, device, madeAt, baseRevision, change], index) => ({
    ...{ id, device, madeAt: instant(madeAt), baseRevision, revision: first + index },
    change: parseColumn(Change, change, "ReactionEvent.change") as VerdictEntry["change"],
  }));
  const isBare = revision > 0 && events.length === 0;
  const made = isBare ? startEntry(entry, revision, start ?? "{}") : undefined;
  return {
    isKnown: known === 1,
    fate: child === null ? undefined : (fate ?? undefined),
    ...{ revision, start: made, entries: made ? [made] : entries },
  };
}

const Start = Change.extend({ loggedAt: z.union([z.string(), z.number()]) });

function startEntry(
  { itemId, childId }: { readonly itemId: string; readonly childId: string },
  revision: number,
  start: string,
): VerdictEntry {
  const { loggedAt, ...change } = parseColumn(Start, start, "Reaction");
  const said = Object.fromEntries(
    Object.entries(change).filter(([, value]) => value !== null && value !== ""),
  );
  return {
    id: `start ${itemId} ${childId}`,
    ...{ device: "", madeAt: instant(String(loggedAt)), baseRevision: 0, revision },
    change: said,
  };
}

function instant(stored: string): string {
  return new Date(/^\d+$/.test(stored) ? Number(stored) : stored).toISOString();
}

/**
 * What keeps an entry under its own id and sets the verdict to what stands after it. A verdict that had
 * no entry yet gets one for what it said before, so that the history of amendments is whole.
 */
export function entryStatements(
  entry: Entry,
  { revision, start }: EntryGround,
  standing: { readonly values: VerdictFields; readonly conflicts: readonly VerdictConflict[] },
  now: Date,
): readonly Statement[] {
  const { eaten, face, quote, note } = standing.values;
  const conflictJson = standing.conflicts.length === 0 ? null : JSON.stringify(standing.conflicts);
  const verdict = `
    INSERT INTO "Reaction"
      ("itemId", "childId", "eaten", "face", "quote", "note", "loggedAt", "revision", "conflictJson")
    VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)
    ON CONFLICT ("itemId", "childId") DO UPDATE SET
      "eaten" = excluded."eaten", "face" = excluded."face", "quote" = excluded."quote",
      "note" = excluded."note", "loggedAt" = excluded."loggedAt", "revision" = excluded."revision",
      "conflictJson" = excluded."conflictJson"`;
  const cells = [
    ...[entry.itemId, entry.childId, eaten, face, quote, note, instant(entry.madeAt)],
    ...[revision + 1, conflictJson],
  ];
  return [
    ...(start ? [keep({ ...entry, ...start }, now)] : []),
    keep(entry, now),
    { sql: verdict, cells },
  ];
}

function keep(entry: Entry, now: Date): Statement {
  const sql = `
    INSERT INTO "ReactionEvent"
      ("id", "itemId", "childId", "changeJson", "baseRevision", "device", "madeAt", "appliedAt")
    VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)`;
  const { id, itemId, childId, baseRevision, device } = entry;
  const changeJson = JSON.stringify(entry.change);
  return {
    sql,
    cells: [
      ...[id, itemId, childId, changeJson, baseRevision, device],
      ...[instant(entry.madeAt), now.toISOString()],
    ],
  };
}
