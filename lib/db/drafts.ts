import { z } from "zod";
import type { Db } from "./client.ts";
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
  return rows.map(({ generatedJson, ...row }) => ({
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
  }));
}

/** What a draft is kept as. */
type DraftColumns = {
  readonly episodeId: string;
  readonly kind: string;
  readonly lunchId: string | null;
  readonly templateVersion: number;
  readonly written: Written;
  readonly body: string;
  readonly edited: boolean;
};

/** Keeps a draft, anew or in the place of the one with an id; its revision goes up by one. */
export async function writeDraft(
  db: Db,
  id: string | undefined,
  { written, ...columns }: DraftColumns,
): Promise<void> {
  const data = { ...columns, generatedJson: JSON.stringify(Written.parse(written)) };
  if (id === undefined) await db.draft.create({ data });
  else await db.draft.update({ where: { id }, data: { ...data, revision: { increment: 1 } } });
}

/** A template of the user's as stored. */
export type TemplateRecord = {
  readonly kind: string;
  readonly version: number;
  readonly body: string;
};

/** Every version of every template, oldest first. */
export async function readTemplates(db: Db): Promise<TemplateRecord[]> {
  return db.template.findMany({
    orderBy: [{ kind: "asc" }, { version: "asc" }],
    select: { kind: true, version: true, body: true },
  });
}
