import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  atOnce,
  entryStatements,
  groundOf,
  groundStatement,
  inTransaction,
  type Entry,
  type Statement,
} from "#lib/db/index.ts";
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
  context: Context,
  input: LogReactionInput,
): Promise<Result<Logged, LogProblem>> {
  const [outcome] = await logReactions(context, [input]);
  if (!outcome) throw new Error("One entry has one outcome.");
  return outcome;
}

/** Applies several entries in one commit; each has its own outcome, in the order given. */
export async function logReactions(
  { db, now }: Context,
  inputs: readonly LogReactionInput[],
): Promise<Result<Logged, LogProblem>[]> {
  const quick = atOnce(db, ({ read, write }) =>
    inputs.map((input) => {
      const { outcome, writes } = decide(read(groundStatement(input)), input, now);
      for (const statement of writes) write(statement);
      return outcome;
    }),
  );
  if (quick) return quick;
  // Something else is being written: wait in line with it.
  return inTransaction(db, async (tx) => {
    const outcomes: Result<Logged, LogProblem>[] = [];
    for (const input of inputs) {
      const { sql, cells } = groundStatement(input);
      const rows = await tx.$queryRawUnsafe<unknown[]>(sql, ...cells);
      const { outcome, writes } = decide(rows, input, now);
      for (const statement of writes) {
        await tx.$executeRawUnsafe(statement.sql, ...statement.cells);
      }
      outcomes.push(outcome);
    }
    return outcomes;
  });
}

type Decided = {
  readonly outcome: Result<Logged, LogProblem>;
  readonly writes: readonly Statement[];
};

/** What an entry comes to and what is written for it, from the rows of its ground. */
function decide(rows: readonly unknown[], input: LogReactionInput, now: Date): Decided {
  const ground = groundOf(rows, input);
  const { itemId, childId } = input;
  if (ground.isKnown) {
    const { revision } = ground;
    return only(ok({ itemId, childId, revision, ...settle(ground.entries), isRepeat: true }));
  }
  if (ground.fate === undefined) return only(refuse({ kind: "gone" }));
  if (ground.fate === "scrapped") return only(refuse({ kind: "not-packed" }));
  const change = Object.fromEntries(
    Object.entries(input.change).filter(([, value]) => value !== undefined),
  ) as Entry["change"];
  const revision = ground.revision + 1;
  const entry = { ...input, change, madeAt: new Date(input.madeAt).toISOString() };
  const settled = settle([...ground.entries, { ...entry, revision }]);
  return {
    outcome: ok({ itemId, childId, revision, ...settled, isRepeat: false }),
    writes: entryStatements(entry, ground, settled, now),
  };
}

function only(outcome: Result<Logged, LogProblem>): Decided {
  return { outcome, writes: [] };
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
