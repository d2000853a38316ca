import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "libsql";
import { expect, onTestFinished, test } from "vitest";
import { applyMigrations, MigrationRefused } from "#lib/db/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const BOXES = "CREATE TABLE box (id INTEGER PRIMARY KEY, name TEXT NOT NULL);";
const LIDS = "CREATE TABLE lid (box INTEGER NOT NULL REFERENCES box(id) ON DELETE CASCADE);";

/** A database file and a folder of migrations of its own. */
function workshop() {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-migrate-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const file = path.join(folder, "test.db");
  const migrations = path.join(folder, "migrations");
  return {
    write: (name: string, sql: string): void => {
      mkdirSync(path.join(migrations, name), { recursive: true });
      writeFileSync(path.join(migrations, name, "migration.sql"), sql);
    },
    remove: (name: string): void => {
      rmSync(path.join(migrations, name), { recursive: true });
    },
    apply: () => applyMigrations(file, migrations),
    run: (sql: string): void => {
      const database = new Database(file);
      database.exec(sql);
      database.close();
    },
    column: (sql: string, from = file): unknown[] => {
      const database = new Database(from);
      const values = database.prepare(sql).pluck().all();
      database.close();
      return values;
    },
  };
}

const TABLES = "SELECT name FROM sqlite_master WHERE name IN ('box', 'lid') ORDER BY name";
const RECORDED = "SELECT migration_name FROM _prisma_migrations ORDER BY rowid";

test("migrations run in name order, are recorded, and run once", () => {
  const { write, apply, column } = workshop();
  write("0002_lids", `INSERT INTO box VALUES (1, 'blue'); ${LIDS}`);
  write("0001_boxes", BOXES);
  expect(apply()).toEqual({ applied: ["0001_boxes", "0002_lids"], copy: undefined });
  expect(column(RECORDED)).toEqual(["0001_boxes", "0002_lids"]);
  expect(apply()).toEqual({ applied: [], copy: undefined });
});

test("a filled file is copied as it was before a later migration", () => {
  const { write, apply, run, column } = workshop();
  write("0001_boxes", BOXES);
  apply();
  run("INSERT INTO box VALUES (1, 'blue')");
  write("0002_lids", `UPDATE box SET name = 'red'; ${LIDS}`);
  const { copy = "" } = apply();
  expect(column("SELECT name FROM box")).toEqual(["red"]);
  expect(column("SELECT name FROM box", copy)).toEqual(["blue"]);
  expect(column(TABLES, copy)).toEqual(["box"]);
});

test("when one of several migrations fails, none is kept", () => {
  const { write, apply, column } = workshop();
  write("0001_boxes", BOXES);
  write("0002_lids", "CREATE TABLE lid (box INTEGER); INSERT INTO nowhere VALUES (1);");
  expect(apply).toThrow(/nowhere/);
  expect(column(TABLES)).toEqual([]);
});

test("a migration that would break links is refused and undone", () => {
  const { write, apply, run, column } = workshop();
  write("0001_boxes", `${BOXES} ${LIDS}`);
  apply();
  run("INSERT INTO box VALUES (1, 'blue'); INSERT INTO lid VALUES (1)");
  write("0002_empty", "DELETE FROM box;");
  expect(apply).toThrow(/break links/);
  expect(column("SELECT name FROM box")).toEqual(["blue"]);
});

test("a newer, a changed and a half-migrated file are refused", () => {
  const { write, remove, apply, run } = workshop();
  write("0001_boxes", BOXES);
  write("0002_lids", LIDS);
  apply();
  remove("0002_lids");
  expect(apply).toThrow(MigrationRefused);
  expect(apply).toThrow(/newer/);
  write("0002_lids", `${LIDS} -- changed`);
  expect(apply).toThrow(/not the one/);
  write("0002_lids", LIDS);
  run("UPDATE _prisma_migrations SET finished_at = NULL WHERE migration_name = '0002_lids'");
  expect(apply).toThrow(/did not finish/);
});

test("foreign keys are watched, inside transactions and after them", async () => {
  const { db } = testContext();
  const state = (from: Pick<typeof db, "$queryRawUnsafe">) =>
    from.$queryRawUnsafe<{ foreign_keys: bigint }[]>("PRAGMA foreign_keys");
  const inside = await db.$transaction((tx) => state(tx));
  const after = await state(db);
  expect([...inside, ...after].map((row) => Number(row.foreign_keys))).toEqual([1, 1]);
});

test("a transaction that throws leaves nothing behind", async () => {
  const { db } = testContext();
  const count = await db.food.count();
  expect(count).toBeGreaterThan(0);
  const attempt = db.$transaction(async (tx) => {
    await tx.$executeRawUnsafe("CREATE TABLE scrap (id INTEGER)");
    throw new Error("stop here");
  });
  await expect(attempt).rejects.toThrow("stop here");
  const left = await db.$queryRawUnsafe("SELECT name FROM sqlite_master WHERE name = 'scrap'");
  expect(left).toEqual([]);
  expect(await db.food.count()).toBe(count);
});
