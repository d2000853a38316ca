import { ok, refuse, type Result } from "#lib/base/index.ts";
import { applyEntry, inTransaction, readEntryGround, type Db, type Entry } from "#lib/db/index.ts";
import { settle, type VerdictConflict, type VerdictFields } from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import type { LogReactionInput } from "./log-reaction.input.ts";

export type LogProblem = { readonly kind: "gone" } | { readonly kind: "not-packed" };

/** The verdict of one child on one item as it stands after an entry. */
export type VerdictState = {
  readonly itemId: string;
  readonly childId: string;
  readonly revision: number;
  readonly values: VerdictFields;
  readonly conflicts: readonly VerdictConflict[];
};
export type Logged = VerdictState & { readonly isRepeat: boolean };

/**
 * Applies one entry exactly once, however often and in whatever order entries are sent. Where two
 * phones said different things, both values are kept on record for the user to choose.
 */
export async function logReaction(
  { db, now }: Context,
  input: LogReactionInput,
): Promise<Result<Logged, LogProblem>> {
  return inTransaction(db, (tx) => apply(tx, input, now));
}

/** Applies several entries in one commit; each has its own outcome, in the order given. */
export async function logReactions(
  { db, now }: Context,
  inputs: readonly LogReactionInput[],
): Promise<Result<Logged, LogProblem>[]> {
  return inTransaction(db, async (tx) => {
    const outcomes: Result<Logged, LogProblem>[] = [];
    for (const input of inputs) outcomes.push(await apply(tx, input, now));
    return outcomes;
  });
}

async function apply(
  tx: Db,
  input: LogReactionInput,
  now: Date,
): Promise<Result<Logged, LogProblem>> {
  const ground = await readEntryGround(tx, input);
  const { itemId, childId } = input;
  if (ground.isKnown) {
    const { revision } = ground;
    return ok({ itemId, childId, revision, ...settle(ground.entries), isRepeat: true });
  }
  if (ground.fate === undefined) return refuse({ kind: "gone" });
  if (ground.fate === "scrapped") return refuse({ kind: "not-packed" });
  const change = Object.fromEntries(
    Object.entries(input.change).filter(([, value]) => value !== undefined),
  ) as Entry["change"];
  const revision = ground.revision + 1;
  const entry = { ...input, change, madeAt: new Date(input.madeAt).toISOString() };
  const settled = settle([...ground.entries, { ...entry, revision }]);
  await applyEntry(tx, entry, ground, settled, now);
  return ok({ itemId, childId, revision, ...settled, isRepeat: false });
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
