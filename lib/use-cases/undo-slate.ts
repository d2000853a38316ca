import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  hasHappenedSince,
  inTransaction,
  parseColumn,
  restoreSnapshot,
  SlateSnapshot,
} from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { numberByCalendar } from "./number-episodes.ts";
import { SLATE } from "./slate-change.ts";

export type UndoProblem = { readonly kind: "nothing" } | { readonly kind: "happened-since" };

/** Takes back the last change of the slate. Refuses when a lid was shut or a verdict given since. */
export async function undoSlate({ db, now }: Context): Promise<Result<string, UndoProblem>> {
  return inTransaction(db, async (tx) => {
    const last = await tx.change.findFirst({
      where: { scope: SLATE, undoneAt: null },
      orderBy: [{ at: "desc" }, { id: "desc" }],
    });
    if (!last) return refuse({ kind: "nothing" });
    const snapshot = parseColumn(SlateSnapshot, last.undoJson, "Change.undo");
    if (await hasHappenedSince(tx, snapshot)) return refuse({ kind: "happened-since" });
    await restoreSnapshot(tx, snapshot);
    await numberByCalendar(tx);
    await tx.change.update({ where: { id: last.id }, data: { undoneAt: now } });
    return ok(last.label);
  });
}

export type UndoView = {
  /** What would be taken back next, in a few words; undefined when nothing can be. */
  readonly label: string | undefined;
  /** How often something was taken back: forms opened before that show what is no longer so. */
  readonly epoch: number;
};

/** What the undo button says. */
export async function loadUndo({ db }: Context): Promise<UndoView> {
  const [last, epoch] = await Promise.all([
    db.change.findFirst({
      where: { scope: SLATE, undoneAt: null },
      orderBy: [{ at: "desc" }, { id: "desc" }],
      select: { label: true },
    }),
    db.change.count({ where: { scope: SLATE, undoneAt: { not: null } } }),
  ]);
  return { label: last?.label, epoch };
}

/** Words for a refusal. */
export function describeUndoProblem({ kind }: UndoProblem): string {
  switch (kind) {
    case "nothing":
      return "There is nothing left to take back.";
    case "happened-since":
      return "A lid was shut, a verdict given or a fact noted since, so that change stays on record.";
  }
}
