import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "libsql";
import { expect, onTestFinished, test } from "vitest";
import { addDays } from "#lib/calendar/index.ts";
import {
  applyMigrations,
  openDatabase,
  readVerdicts,
  writeSettings,
  type Db,
} from "#lib/db/index.ts";
import { loadEstimates } from "#lib/use-cases/load-estimates.ts";
import { pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { testContext } from "#tests/support/test-context.ts";
import { threeYears, verdictsByHand } from "#tests/support/verdict-writes.ts";

const MIGRATIONS = path.resolve(import.meta.dirname, "../../prisma/migrations");
const PAIR = `"itemId", "childId"`;
/** Writes after which the verdicts say something else, one after another on one file: the first judged item is i0a, by c1. */
const WRITES: readonly (readonly [string, string])[] = [
  [
    "a verdict is given",
    `INSERT INTO "Reaction" (${PAIR}, "eaten", "loggedAt") VALUES ('i0a', 'c2', 1, 0)`,
  ],
  [
    "a verdict is changed",
    `UPDATE "Reaction" SET "eaten" = 3 WHERE "itemId" = 'i0a' AND "childId" = 'c2'`,
  ],
  ["a face is given", `UPDATE "Reaction" SET "face" = 25 WHERE "itemId" = 'i0a'`],
  ["a verdict changes hands", `UPDATE "Reaction" SET "childId" = 'c2' WHERE "itemId" = 'i2a'`],
  [
    "a verdict goes to another item",
    `UPDATE "Reaction" SET "itemId" = 'i0b' WHERE "itemId" = 'i0a' AND "childId" = 'c2'`,
  ],
  ["a verdict is taken back", `DELETE FROM "Reaction" WHERE "itemId" = 'i0b'`],
  ["a share is changed", `UPDATE "ItemShare" SET "amount" = 9 WHERE "itemId" = 'i0a'`],
  [
    "a share goes to another item",
    `UPDATE "ItemShare" SET "itemId" = 'i0b' WHERE "itemId" = 'i0a'`,
  ],
  [
    "a share comes from another item",
    `UPDATE "ItemShare" SET "itemId" = 'i0a' WHERE "itemId" = 'i0b'`,
  ],
  ["a share is taken away", `DELETE FROM "ItemShare" WHERE "itemId" = 'i0a'`],
  ["a share is given", `INSERT INTO "ItemShare" (${PAIR}, "amount") VALUES ('i0a', 'c1', 0)`],
  [
    "a trick is another",
    `UPDATE "ItemTrick" SET "trickId" = (SELECT min("id") FROM "Trick") WHERE "itemId" = 'i0a'`,
  ],
  ["a trick is taken away", `DELETE FROM "ItemTrick" WHERE "itemId" = 'i0a'`],
  [
    "a trick is given",
    `INSERT INTO "ItemTrick" ("itemId", "trickId") SELECT 'i0a', max("id") FROM "Trick"`,
  ],
  ["an item is another food", `UPDATE "LunchItem" SET "foodId" = 'hummus' WHERE "id" = 'i0a'`],
  ["an item is another part", `UPDATE "LunchItem" SET "part" = 'dip' WHERE "id" = 'i0a'`],
  [
    "an item is more",
    `UPDATE "LunchItem" SET "amount" = 70 WHERE "id" = 'i2a'; DELETE FROM "ItemShare"`,
  ],
  ["an item is in pieces", `UPDATE "LunchItem" SET "unit" = 'piece' WHERE "id" = 'i0a'`],
  ["an item is scrapped", `UPDATE "LunchItem" SET "fate" = 'scrapped' WHERE "id" = 'i0a'`],
  ["an item is packed after all", `UPDATE "LunchItem" SET "fate" = 'packed' WHERE "id" = 'i0a'`],
  ["an item is renamed", `UPDATE "LunchItem" SET "id" = 'anew' WHERE "id" = 'i0a'`],
  ["an item goes to another lunch", `UPDATE "LunchItem" SET "lunchId" = 'l5' WHERE "id" = 'anew'`],
  ["a lunch goes to another year", `UPDATE "Lunch" SET "date" = '2023-01-09' WHERE "id" = 'l1'`],
  ["a food is of another family", `UPDATE "Food" SET "familyId" = 'egg' WHERE "id" = 'hummus'`],
  ["a family is renamed", `UPDATE "Family" SET "id" = 'eggs' WHERE "id" = 'egg'`],
  ["a food is merged", `UPDATE "Food" SET "mergedIntoId" = 'pear' WHERE "id" = 'hummus'`],
  ["a merge is taken back", `UPDATE "Food" SET "mergedIntoId" = NULL WHERE "id" = 'hummus'`],
  ["a child is renamed", `UPDATE "Child" SET "id" = 'c3' WHERE "id" = 'c2'`],
  ["an item goes", `DELETE FROM "LunchItem" WHERE "id" = 'anew'`],
  ["a lunch goes", `DELETE FROM "Lunch" WHERE "id" = 'l2'`],
  ["a week goes", `DELETE FROM "Episode" WHERE "id" = 'e4'`],
  ["a child goes", `DELETE FROM "Child" WHERE "id" = 'c3'`],
];

/** The same without foreign keys, as a shell has it unless told otherwise: what is left behind has no lunch. */
const CARELESS: readonly (readonly [string, string])[] = [
  [
    "an item goes",
    `CREATE TABLE items AS SELECT * FROM "LunchItem"; DELETE FROM "LunchItem" WHERE "id" = 'i0a'`,
  ],
  ["an item comes back", `INSERT INTO "LunchItem" SELECT * FROM items WHERE "id" = 'i0a'`],
  ["an item is renamed", `UPDATE "LunchItem" SET "id" = 'anew' WHERE "id" = 'i0a'`],
  [
    "a lunch goes",
    `CREATE TABLE lunches AS SELECT * FROM "Lunch"; DELETE FROM "Lunch" WHERE "id" = 'l1'`,
  ],
  ["a lunch comes back", `INSERT INTO "Lunch" SELECT * FROM lunches WHERE "id" = 'l1'`],
  ["a lunch is renamed", `UPDATE "Lunch" SET "id" = 'anew' WHERE "id" = 'l1'`],
  [
    "a food goes",
    `CREATE TABLE foods AS SELECT * FROM "Food"; DELETE FROM "Food" WHERE "id" = 'gouda'`,
  ],
  ["a food comes back", `INSERT INTO "Food" SELECT * FROM foods WHERE "id" = 'gouda'`],
  ["a food is renamed", `UPDATE "Food" SET "id" = 'anew' WHERE "id" = 'gouda'`],
];

test.each([
  ["with foreign keys", "ON", WRITES],
  ["without", "OFF", CARELESS],
])("every kind of write to what a verdict says is seen, %s", async (_, keys, writes) => {
  const context = testContext();
  await threeYears(context);
  const { db } = context;
  const [{ file }] = await db.$queryRawUnsafe<[{ file: string }]>("PRAGMA database_list");
  const shell = new Database(file);
  onTestFinished(() => void shell.close());
  for (const [what, sql] of writes) {
    const before = await readVerdicts(db);
    shell.exec(`PRAGMA foreign_keys=${keys}; ${sql}`);
    const after = await verdictsByHand(db);
    expect(after, `${what}: that should change something`).not.toEqual(before);
    expect(await readVerdicts(db), what).toEqual(after);
  }
});

test("a file of before gets its years with the update, and its verdicts are read", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-years-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const [file, before] = [path.join(folder, "old.db"), path.join(folder, "migrations")];
  cpSync(MIGRATIONS, before, { recursive: true, filter: (from) => !from.includes("0008_") });
  applyMigrations(file, before);
  const shell = new Database(file);
  shell.exec(`
    INSERT INTO "Child" ("id", "privateName", "onScreenName") VALUES ('c1', 'Ines', 'Biscuit');
    INSERT INTO "Family" ("id", "name", "group") VALUES ('pear', 'pear', 'fruit');
    INSERT INTO "Food" ("id", "name", "familyId", "group", "partsJson", "shelfJson", "servingGrams")
      VALUES ('pear', 'pear', 'pear', 'fruit', '[]', '{}', 80);
    INSERT INTO "Episode" ("id", "number", "weekOf") VALUES ('e1', 1, '2024-03-04');
    INSERT INTO "Lunch" ("id", "episodeId", "date") VALUES ('l1', 'e1', '2024-03-04');
    INSERT INTO "LunchItem" ("id", "lunchId", "foodId", "part", "amount")
      VALUES ('i1', 'l1', 'pear', 'fruit', 80);
    INSERT INTO "Reaction" ("itemId", "childId", "eaten", "loggedAt") VALUES ('i1', 'c1', 3, 0)`);
  shell.close();
  applyMigrations(file, MIGRATIONS);
  const db = openDatabase(file);
  onTestFinished(() => db.$disconnect());
  expect(await readVerdicts(db)).toMatchObject([{ itemId: "i1", eaten: 3, day: "2024-03-04" }]);
});

test("nothing is read again for a write that no verdict rests on", async () => {
  const context = testContext();
  await threeYears(context);
  const { db, today } = context;
  const [verdicts, learned] = [await readVerdicts(context.db), await loadEstimates(context)];
  await writeSettings(db, { isWelcomed: true });
  await db.errandWeek.create({ data: { weekOf: "2026-03-09" } });
  await pencilWeek(context, { monday: addDays(today, 12), themeId: "", title: "Later" });
  await db.lunch.update({ where: { id: "l0" }, data: { angle: "seen from above" } });
  await db.lunchItem.updateMany({ data: { note: "crusts off", fate: "packed" } });
  await db.itemShare.create({ data: { itemId: "i0b", childId: "c1", amount: 0 } });
  await db.reaction.updateMany({ data: { quote: "More", revision: { increment: 1 } } });
  await db.food.updateMany({ data: { name: "another name" } });
  expect(await readVerdicts(context.db)).toBe(verdicts);
  expect(await loadEstimates(context)).toBe(learned);
});

test("after a verdict only its year is read again", async () => {
  const context = testContext();
  await threeYears(context);
  const before = await readVerdicts(context.db);
  await context.db.reaction.update({
    where: { itemId_childId: { itemId: "i2a", childId: "c1" } },
    data: { eaten: 0 },
  });
  const after = await readVerdicts(context.db);
  const again = after.filter((verdict, index) => verdict !== before[index]);
  expect(again.map(({ day }) => day.slice(0, 4))).toEqual(["2025", "2025"]);
});

test("a transaction sees its own writes, and nobody else sees one taken back", async () => {
  const context = testContext();
  await threeYears(context);
  const { db } = context;
  const before = await readVerdicts(db);
  const eatUp = (tx: Db) => tx.reaction.updateMany({ data: { eaten: 4, face: 100 } });
  const attempt = db.$transaction(async (tx) => {
    expect(await readVerdicts(tx)).toBe(before);
    await eatUp(tx);
    expect((await readVerdicts(tx)).every(({ face }) => face === 100)).toBe(true);
    throw new Error("taken back");
  });
  await expect(attempt).rejects.toThrow("taken back");
  expect(await readVerdicts(db)).toEqual(before);
  await db.reaction.updateMany({ data: { eaten: 1, face: 10 } });
  expect((await readVerdicts(db)).every(({ face }) => face === 10)).toBe(true);
});
