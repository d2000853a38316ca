import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { LogReactionInput } from "./log-reaction.input.ts";

export type LogProblem = { readonly kind: "gone" } | { readonly kind: "not-packed" };
export type Logged = { readonly revision: number; readonly isRepeat: boolean };

/**
 * Applies one entry exactly once, however often it is sent. Fields that were changed by another phone
 * after the one this entry knew are kept on record as a conflict for the user to settle.
 */
export async function logReaction(
  { db }: Context,
  input: LogReactionInput,
): Promise<Result<Logged, LogProblem>> {
  return inTransaction(db, async (tx) => {
    const where = { itemId_childId: { itemId: input.itemId, childId: input.childId } };
    const known = await tx.reactionEvent.findUnique({ where: { id: input.id } });
    const held = await tx.reaction.findUnique({ where });
    if (known) return ok({ revision: held?.revision ?? 0, isRepeat: true });
    const item = await tx.lunchItem.findUnique({
      where: { id: input.itemId },
      select: { fate: true },
    });
    const child = await tx.child.findUnique({ where: { id: input.childId }, select: { id: true } });
    if (!item || !child) return refuse({ kind: "gone" });
    if (item.fate === "scrapped") return refuse({ kind: "not-packed" });

    const madeAt = new Date(input.madeAt);
    await tx.reactionEvent.create({
      data: {
        id: input.id,
        itemId: input.itemId,
        childId: input.childId,
        changeJson: JSON.stringify(input.change),
        baseRevision: input.baseRevision,
        madeAt,
      },
    });
    const change = Object.fromEntries(
      Object.entries(input.change).filter(([, value]) => value !== undefined),
    );
    const revision = (held?.revision ?? 0) + 1;
    const clashes = held !== null && held.revision > input.baseRevision && differs(held, change);
    await tx.reaction.upsert({
      where,
      create: { itemId: input.itemId, childId: input.childId, loggedAt: madeAt, ...change },
      update: clashes
        ? { conflictJson: JSON.stringify({ entry: input.id, ...change }), revision }
        : { ...change, loggedAt: madeAt, revision },
    });
    return ok({ revision, isRepeat: false });
  });
}

/** Words for a refusal. */
export function describeLogProblem({ kind }: LogProblem): string {
  switch (kind) {
    case "gone":
      return "This item is no longer in the lunch. Open the day again.";
    case "not-packed":
      return "This item was scrapped and not packed, so there is nothing to judge.";
  }
}

/** True when both sides set a field, and to different values. */
function differs(
  held: { eaten: number | null; face: number | null; quote: string; note: string },
  change: Readonly<Record<string, unknown>>,
): boolean {
  return Object.entries(change).some(([field, value]) => {
    const before = held[field as keyof typeof held];
    return before !== null && before !== "" && before !== value;
  });
}
