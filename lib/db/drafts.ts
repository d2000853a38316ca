import { z } from "zod";
import type { Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";
import type { Prisma } from "./generated/client.ts";
import { parseColumn } from "./json.ts";

const SentenceColumn = z.object({ text: z.string(), facts: z.array(z.string()) });
const FactColumn = z.object({
  id: z.string(),
  label: z.string(),
  rows: z.array(z.tuple([z.string(), z.string()])),
});

/** A draft as it was written from the records: its sentences, and what the facts said then. */
const Written = z.object({
  lines: z.array(z.array(SentenceColumn)),
  facts: z.array(FactColumn),
  salt: z.number().int().default(0),
  /** Findings that the user decided to keep, by their keys. */
  kept: z.array(z.string()).default([]),
  /** What a board post was asked for; null for a piece of an episode. */
  board: z
    .object({ foodId: z.string().nullable(), lunchIds: z.array(z.string()) })
    .nullable()
    .default(null),
  /** What of it went out to the public: the sentences that told facts, and how they were written. */
  published: z
    .object({
      sentences: z.array(SentenceColumn),
      templateVersion: z.number().int(),
      salt: z.number().int(),
    })
    .nullable()
    .default(null),
});
type Written = z.infer<typeof Written>;

/** A draft as stored. */
export type DraftRecord = {
  readonly id: string;
  readonly kind: string;
  readonly lunchId: string | null;
  readonly templateVersion: number;
  readonly written: Written;
  readonly body: string;
  readonly edited: boolean;
  readonly publishedOn: string | null;
  readonly revision: number;
  readonly updatedAt: Date;
};

/** Every draft kept for an episode. */
export async function readDrafts(db: Db, episodeId: string): Promise<DraftRecord[]> {
  const rows = await db.draft.findMany({ where: { episodeId }, orderBy: { createdAt: "asc" } });
  return rows.map(draftOfRow);
}

/** The kind that posts of the board are kept as; they belong to no episode. */
export const BOARD_KIND = "board";

/** Board posts that are kept, latest first, no more than `most`; or the one with an id. */
export async function readBoardDrafts(
  db: Db,
  { id, most }: { readonly id?: string; readonly most: number },
): Promise<DraftRecord[]> {
  const rows = await db.draft.findMany({
    where: { kind: BOARD_KIND, ...(id === undefined ? {} : { id }) },
    orderBy: [{ createdAt: "desc" }, { id: "desc" }],
    take: most,
  });
  return rows.map(draftOfRow);
}

function draftOfRow({ generatedJson, ...row }: Prisma.DraftGetPayload<object>): DraftRecord {
  return {
    id: row.id,
    kind: row.kind,
    lunchId: row.lunchId,
    templateVersion: row.templateVersion,
    written: parseColumn(Written, generatedJson, "Draft.generated"),
    body: row.body,
    edited: row.edited,
    publishedOn: row.publishedOn,
    revision: row.revision,
    updatedAt: row.updatedAt,
  };
}

/** What a draft is kept as. */
type DraftColumns = {
  readonly episodeId: string | null;
  readonly kind: string;
  readonly lunchId: string | null;
  readonly templateVersion: number;
  readonly written: Written;
  readonly body: string;
  readonly edited: boolean;
};

/** Keeps a draft, anew or in the place of the one with an id, and says its id; its revision goes up by one. */
export async function writeDraft(
  db: Db,
  id: string | undefined,
  { written, ...columns }: DraftColumns,
): Promise<string> {
  const data = { ...columns, generatedJson: JSON.stringify(Written.parse(written)) };
  const row =
    id === undefined
      ? await db.draft.create({ data })
      : await db.draft.update({ where: { id }, data: { ...data, revision: { increment: 1 } } });
  return row.id;
}

/** A template of the user's as stored. */
export type TemplateRecord = {
  readonly kind: string;
  readonly version: number;
  readonly body: string;
  readonly createdAt: Date;
};

/** Every version of every template, oldest first. */
export async function readTemplates(db: Db): Promise<TemplateRecord[]> {
  return db.template.findMany({
    orderBy: [{ kind: "asc" }, { version: "asc" }],
    select: { kind: true, version: true, body: true, createdAt: true },
  });
}

const Openers = z.array(z.object({ text: z.string(), title: z.string() }));

/**
 * First sentences on the theme, with their themes, of what was kept for the weeks between two Mondays,
 * each once. SQLite looks into the kept texts itself: reading all of them for one sentence each would
 * take longer than anything else an episode needs.
 */
export async function readOpeners(
  db: Db,
  from: Day,
  before: Day,
): Promise<{ readonly text: string; readonly title: string }[]> {
  const rows = await db.$queryRaw<unknown[]>`
    SELECT DISTINCT text, COALESCE(title, '') AS title FROM (
      SELECT (SELECT s."value" ->> '$.text'
                FROM json_each(d."generatedJson", '$.lines') l, json_each(l."value") s,
                     json_each(s."value", '$.facts') f
               WHERE f."value" = 'theme' ORDER BY l."key", s."key" LIMIT 1) AS text,
             (SELECT r."value" ->> '$[1]'
                FROM json_each(d."generatedJson", '$.facts') f, json_each(f."value", '$.rows') r
               WHERE f."value" ->> '$.id' = 'theme' AND r."value" ->> '$[0]' = 'Title'
               LIMIT 1) AS title
        FROM "Draft" d JOIN "Episode" e ON e."id" = d."episodeId"
       WHERE e."weekOf" >= ${from} AND e."weekOf" < ${before})
    WHERE text IS NOT NULL`;
  return Openers.parse(rows);
}

/** Marks a kept draft as published on a day, with what of it went out; without a day it takes the mark back. */
export async function publishDraft(
  db: Db,
  { id, written }: Pick<DraftRecord, "id" | "written">,
  publishedOn: Day | null,
): Promise<void> {
  const generatedJson = JSON.stringify(Written.parse(written));
  await db.draft.update({ where: { id }, data: { generatedJson, publishedOn } });
}

/** Keeps a template's next version and says its number. */
export async function writeTemplate(db: Db, kind: string, body: string): Promise<number> {
  const last = await db.template.findFirst({
    where: { kind },
    orderBy: { version: "desc" },
    select: { version: true },
  });
  const version = (last?.version ?? 0) + 1;
  await db.template.create({ data: { kind, version, body } });
  return version;
}
