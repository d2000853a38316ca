import { ok, refuse, type Result } from "#lib/base/index.ts";
import { day, mondayOf } from "#lib/calendar/index.ts";
import { inTransaction, readEpisode, readSettings } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { KeepFindingInput } from "./keep-finding.input.ts";
import { readChecks } from "./read-checks.ts";

export type KeepProblem = { readonly kind: "gone" | "settled" | "may-not" };

/**
 * Keeps a finding with the user's note, or takes it up again when the note is null. The lunch is checked
 * anew first: refuses when the finding is no longer there, and where no note may keep it.
 */
export async function keepFinding(
  { db }: Context,
  { lunchId, key, note }: KeepFindingInput,
): Promise<Result<undefined, KeepProblem>> {
  return inTransaction(db, async (tx) => {
    const row = await tx.lunch.findUnique({ where: { id: lunchId }, select: { date: true } });
    if (!row) return refuse({ kind: "gone" });
    if (note === null) {
      await tx.waiver.deleteMany({ where: { lunchId, key } });
      return ok(undefined);
    }
    const episode = await readEpisode(tx, mondayOf(day(row.date)));
    const lunch = episode?.lunches.find(({ id }) => id === lunchId);
    if (!lunch) return refuse({ kind: "gone" });
    const checks = await readChecks(tx, [lunch], await readSettings(tx));
    const finding = checks.of(lunch).find((one) => one.key === key);
    if (!finding) return refuse({ kind: "settled" });
    if (!finding.mayKeep) return refuse({ kind: "may-not" });
    const kept = { lunchId_key: { lunchId, key } };
    await tx.waiver.upsert({ where: kept, create: { lunchId, key, note }, update: { note } });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeKeepProblem({ kind }: KeepProblem): string {
  switch (kind) {
    case "gone":
      return "This lunch was removed meanwhile.";
    case "settled":
      return "This finding is settled already. Reload the page.";
    case "may-not":
      return "No note can keep this one: change the food, or the child’s record.";
  }
}
