import { randomUUID } from "node:crypto";
import fc from "fast-check";
import Database from "libsql";
import { expect, onTestFinished, test } from "vitest";
import { inTransaction, openDatabase, readVerdicts, type Db } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { mergeFoods, undoMerge } from "#lib/use-cases/larder/merge-foods.ts";
import { logReaction } from "#lib/use-cases/log-reaction.ts";
import { testContext } from "#tests/support/test-context.ts";
import {
  anySql,
  CHILDREN,
  FOODS,
  ITEMS,
  threeYears,
  verdictsByHand,
} from "#tests/support/verdict-writes.ts";

const write = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      /** By the program, in a transaction that is kept or not, by another client, by bare SQL with and without foreign keys. */
      by: fc.constantFrom("program", "kept", "taken back", "client", "shell", "careless shell"),
      sql: anySql,
    }),
  },
  fc.record({
    by: fc.constant("phone" as const),
    itemId: fc.constantFrom(...ITEMS),
    childId: fc.constantFrom(...CHILDREN),
    change: fc.record(
      { eaten: fc.constantFrom(null, 0, 2, 4), note: fc.constantFrom("", "x") },
      { requiredKeys: [] },
    ),
  }),
  fc.record({
    by: fc.constant("merge" as const),
    from: fc.constantFrom(...FOODS),
    into: fc.constantFrom(...FOODS),
  }),
  fc.record({ by: fc.constant("undo" as const) }),
);
type Write = typeof write extends fc.Arbitrary<infer Value> ? Value : never;

class TakenBack extends Error {}

/** What may be written, on one file. */
async function workshop(context: Context): Promise<(write: Write) => Promise<void>> {
  const { db } = context;
  const [{ file }] = await db.$queryRawUnsafe<[{ file: string }]>("PRAGMA database_list");
  const client = openDatabase(file);
  const shell = new Database(file);
  onTestFinished(async () => {
    shell.close();
    await client.$disconnect();
  });
  const merges: string[] = [];
  const inside = async (tx: Db, sql: string): Promise<void> => {
    await tx.$executeRawUnsafe(sql);
    expect(await readVerdicts(tx)).toEqual(await verdictsByHand(tx));
  };
  return async (one) => {
    switch (one.by) {
      case "phone":
        await logReaction(context, {
          ...{ id: randomUUID(), itemId: one.itemId, childId: one.childId, device: "phone" },
          ...{ baseRevision: 99, madeAt: context.now.toISOString(), change: one.change },
        });
        return;
      case "merge": {
        const outcome = await mergeFoods(context, one);
        if (outcome.ok) merges.push(outcome.value);
        return;
      }
      case "undo":
        await undoMerge(context, merges.pop() ?? "");
        return;
      case "program":
        await db.$executeRawUnsafe(one.sql);
        return;
      case "client":
        await client.$executeRawUnsafe(one.sql);
        return;
      case "kept":
        return inTransaction(db, (tx) => inside(tx, one.sql));
      case "taken back":
        return inTransaction(db, async (tx) => {
          await inside(tx, one.sql);
          throw new TakenBack();
        });
      case "shell":
      case "careless shell":
        shell.exec(`PRAGMA foreign_keys=${one.by === "shell" ? "ON" : "OFF"}; ${one.sql}`);
    }
  };
}

test("whoever writes whatever, the kept verdicts are those of the records", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(write, { minLength: 1, maxLength: 25 }), async (writes) => {
      const context = testContext();
      await threeYears(context);
      const act = await workshop(context);
      for (const one of writes) {
        await act(one).catch((error: unknown) => {
          const isRefused = error instanceof TakenBack || /constraint/i.test(String(error));
          if (!isRefused) throw error;
        });
        expect(await readVerdicts(context.db)).toEqual(await verdictsByHand(context.db));
      }
    }),
    { numRuns: 60 },
  );
});
