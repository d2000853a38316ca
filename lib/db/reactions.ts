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
