import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { TrickInput } from "./trick.input.ts";
import { slugOf } from "./typed.ts";

export type SaveTrickProblem = { readonly kind: "gone" | "changed-elsewhere" | "name-taken" };

/**
 * Saves a trick as typed, or adds one where the input has no id. Refuses when another tab saved first
 * and when another trick has that very name.
 */
export async function saveTrick(
  { db, now }: Context,
  input: TrickInput,
): Promise<Result<string, SaveTrickProblem>> {
  return inTransaction(db, async (tx): Promise<Result<string, SaveTrickProblem>> => {
    const row =
      input.id === "" ? undefined : await tx.trick.findUnique({ where: { id: input.id } });
    if (row === null) return refuse({ kind: "gone" });
    if (row && (row.editedAt?.toISOString() ?? "") !== input.editedAt)
      return refuse({ kind: "changed-elsewhere" });
    if (await hasNamesake(tx, input)) return refuse({ kind: "name-taken" });
    const data = {
      ...{ name: input.name, kind: input.kind, minutes: input.minutes, editedAt: now },
      ...{ needsSliceable: input.needsSliceable },
      motifsJson: JSON.stringify(input.motifs),
      coloursJson: JSON.stringify(input.colours),
    };
    if (row) await tx.trick.update({ where: { id: row.id }, data });
    const id = row?.id ?? (await freeId(tx, input.name));
    if (!row) await tx.trick.create({ data: { id, ...data } });
    return ok(id);
  });
}

/** Words for a refusal. */
export function describeSaveTrickProblem({ kind }: SaveTrickProblem): string {
  switch (kind) {
    case "gone":
      return "This trick is no longer on record. Open the tricks again.";
    case "changed-elsewhere":
      return "Another tab changed this trick after you opened it. Nothing was overwritten: what you typed still stands here. Reload to see the other version.";
    case "name-taken":
      return "There is a trick of that name already. Give this one another.";
  }
}

async function hasNamesake(tx: Db, { id, name }: TrickInput): Promise<boolean> {
  const rows = await tx.$queryRaw<readonly unknown[]>`
    SELECT 1 FROM "Trick" WHERE lower("name") = lower(${name}) AND "id" <> ${id}`;
  return rows.length > 0;
}

async function freeId(tx: Db, name: string): Promise<string> {
  const base = slugOf(name) || "trick";
  for (let turn = 1; ; turn += 1) {
    const id = turn === 1 ? base : `${base}-${turn}`;
    if ((await tx.trick.count({ where: { id } })) === 0) return id;
  }
}
