import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { SaveDayFactsInput } from "./save-day-facts.input.ts";

export type FactsProblem = { readonly kind: "gone" | "changed" };

/** Keeps minutes, what was hard and the pick-ups of a day; refuses over a change it had not seen. */
export async function saveDayFacts(
  { db }: Context,
  { lunchId, revision, minutes, hard, pickups }: SaveDayFactsInput,
): Promise<Result<{ readonly revision: number }, FactsProblem>> {
  return inTransaction(db, async (tx) => {
    const lunch = await tx.lunch.findUnique({ where: { id: lunchId }, select: { revision: true } });
    if (!lunch) return refuse({ kind: "gone" });
    if (lunch.revision !== revision) return refuse({ kind: "changed" });
    const data = { minutesUsed: minutes, hard, pickups, revision: revision + 1 };
    await tx.lunch.update({ where: { id: lunchId }, data });
    return ok({ revision: revision + 1 });
  });
}

/** Words for a refusal. */
export function describeFactsProblem({ kind }: FactsProblem): string {
  return kind === "gone"
    ? "This lunch was removed meanwhile."
    : "This day was changed elsewhere since you opened it. Copy what you typed, reload, and save again.";
}
