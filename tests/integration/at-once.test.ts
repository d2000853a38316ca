import { expect, test } from "vitest";
import { atOnce, inTransaction, keepUntilWritten } from "#lib/db/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const attempt = (id: string) => ({ sql: `INSERT INTO "Attempt" ("id") VALUES (?1)`, cells: [id] });
const all = { sql: `SELECT "id" FROM "Attempt" ORDER BY "id"`, cells: [] };

test("what is written at once is read by the other connection, and by what was kept", async () => {
  const { db } = testContext();
  const count = () => keepUntilWritten(db, "attempts", () => db.attempt.count());
  expect(await count()).toBe(0);
  const rows = atOnce(db, ({ read, write }) => {
    write(attempt("one"));
    return read(all);
  });
  expect(rows).toMatchObject([{ id: "one" }]);
  expect(await count()).toBe(1);
});

test("all of it is kept, or none", async () => {
  const { db } = testContext();
  expect(() =>
    atOnce(db, ({ write }) => {
      write(attempt("one"));
      write(attempt("one"));
    }),
  ).toThrow(/UNIQUE/);
  expect(await db.attempt.count()).toBe(0);
  expect(atOnce(db, ({ write }) => write(attempt("two"))) ?? "done").toBe("done");
  expect(await db.attempt.count()).toBe(1);
});

test("while something else is being written nothing is done, and nobody waits for it", async () => {
  const { db } = testContext();
  let isOver = false;
  const answer = await inTransaction(db, async (tx) => {
    await tx.attempt.create({ data: { id: "slow" } });
    const quick = atOnce(db, ({ read }) => read(all));
    isOver = true;
    return quick;
  });
  expect([answer, isOver]).toEqual([undefined, true]);
  expect(atOnce(db, ({ read }) => read(all).length)).toBe(1);
});

test("a foreign key that leads nowhere is refused", () => {
  const { db } = testContext();
  const share = {
    sql: `INSERT INTO "ItemShare" ("itemId", "childId", "amount") VALUES ('none', 'nobody', 1)`,
    cells: [],
  };
  expect(() => atOnce(db, ({ write }) => write(share))).toThrow(/FOREIGN KEY/);
});
