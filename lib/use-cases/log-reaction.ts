import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  inTransaction,
  keepEntry,
  noteConflict,
  readEntryGround,
  writeVerdict,
  type Entry,
  type StandingVerdict,
} from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { LogReactionInput } from "./log-reaction.input.ts";

export type LogProblem = { readonly kind: "gone" } | { readonly kind: "not-packed" };
export type Logged = { readonly revision: number; readonly isRepeat: boolean };

/**
 * Applies one entry exactly once, however often it is sent. Fields that were changed by another phone
 * after the one this entry knew are kept on record as a conflict for the user to settle.
 */
export async function logReaction(
  { db, now }: Context,
  input: LogReactionInput,
): Promise<Result<Logged, LogProblem>> {
  return inTransaction(db, async (tx) => {
    const { isKnown, fate, standing } = await readEntryGround(tx, input);
    if (isKnown) return ok({ revision: standing?.revision ?? 0, isRepeat: true });
    if (fate === undefined) return refuse({ kind: "gone" });
    if (fate === "scrapped") return refuse({ kind: "not-packed" });

    const change = Object.fromEntries(
      Object.entries(input.change).filter(([, value]) => value !== undefined),
    ) as Entry["change"];
    const entry = { ...input, madeAt: new Date(input.madeAt), change };
    await keepEntry(tx, entry, now);
    const before = standing ?? NO_VERDICT;
    const revision = before.revision + 1;
    if (before.revision > input.baseRevision && differs(before, change)) {
      await noteConflict(tx, entry, revision);
    } else {
      await writeVerdict(tx, entry, { ...before, ...change, revision });
    }
    return ok({ revision, isRepeat: false });
  });
}

const NO_VERDICT: StandingVerdict = { revision: 0, eaten: null, face: null, quote: "", note: "" };

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
function differs(held: StandingVerdict, change: Readonly<Record<string, unknown>>): boolean {
  return Object.entries(change).some(([field, value]) => {
    const before = held[field as keyof typeof held];
    return before !== null && before !== "" && before !== value;
  });
}
