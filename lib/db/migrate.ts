import { createHash, randomUUID } from "node:crypto";
import { copyFileSync, existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import Database from "libsql";

/** Why a database file was not brought up to date; worded for the person who starts the program. */
export class MigrationRefused extends Error {
  override name = "MigrationRefused";
}

export type MigrationOutcome = {
  /** Names of the migrations applied now, in order. */
  readonly applied: readonly string[];
  /** The copy made before, when a filled file was changed. */
  readonly copy: string | undefined;
};

const TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME,
  "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME,
  "started_at" DATETIME NOT NULL DEFAULT current_timestamp,
  "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

type Migration = { readonly name: string; readonly sql: string; readonly checksum: string };
type AppliedRow = { migration_name: string; checksum: string; finished_at: unknown };

/**
 * Applies the pending migrations of a folder to a database file, in name order, inside one transaction,
 * recorded in the table Prisma keeps. Makes a copy of the file first when it already holds something.
 * Throws `MigrationRefused` when the file is newer than the program, was changed, or is half-migrated.
 */
export function applyMigrations(file: string, folder: string): MigrationOutcome {
  const wanted = readMigrations(folder);
  const database = new Database(file);
  try {
    database.exec("PRAGMA busy_timeout=10000; PRAGMA journal_mode=WAL;");
    const before = readApplied(database);
    if (pendingAfter(before, wanted).length === 0) return { applied: [], copy: undefined };

    // A table rebuild would cascade into its children; inside a transaction this switch does nothing.
    database.exec("PRAGMA foreign_keys=OFF");
    const copy = before.length > 0 ? copyBefore(database, file, wanted) : undefined;
    database.exec("BEGIN IMMEDIATE");
    try {
      database.exec(TABLE);
      // Read again: another starter may have been first.
      const pending = pendingAfter(readApplied(database), wanted);
      for (const migration of pending) applyOne(database, migration);
      const broken = database.prepare("PRAGMA foreign_key_check").all();
      if (broken.length > 0) {
        throw new MigrationRefused(
          "The update would break links between records; nothing was changed.",
        );
      }
      database.exec("COMMIT");
      database.exec("PRAGMA wal_checkpoint(TRUNCATE)");
      return { applied: pending.map((migration) => migration.name), copy };
    } catch (problem) {
      database.exec("ROLLBACK");
      throw problem;
    }
  } finally {
    database.close();
  }
}

function readMigrations(folder: string): Migration[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}

function readApplied(database: Database.Database): AppliedRow[] {
  const known = database
    .prepare("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'")
    .get();
  if (!known) return [];
  return database
    .prepare(
      "SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY migration_name",
    )
    .all() as AppliedRow[];
}

function pendingAfter(applied: readonly AppliedRow[], wanted: readonly Migration[]): Migration[] {
  const byName = new Map(wanted.map((migration) => [migration.name, migration]));
  for (const row of applied) {
    if (row.finished_at === null) {
      throw new MigrationRefused(
        `An earlier update (${row.migration_name}) did not finish. Put back the copy that lies beside the database file.`,
      );
    }
    const migration = byName.get(row.migration_name);
    if (!migration) {
      throw new MigrationRefused(
        `This database was written by a newer Noonbook (${row.migration_name} is unknown here). Update the program, or point NOONBOOK_DATA at another folder.`,
      );
    }
    if (migration.checksum !== row.checksum) {
      throw new MigrationRefused(
        `The update ${row.migration_name} is not the one this database was made with. Fetch the program's own files again.`,
      );
    }
  }
  const done = new Set(applied.map((row) => row.migration_name));
  return wanted.filter((migration) => !done.has(migration.name));
}

function applyOne(database: Database.Database, migration: Migration): void {
  database.exec(migration.sql);
  database
    .prepare(
      "INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)",
    )
    .run(randomUUID(), migration.checksum, migration.name, Date.now(), Date.now());
}

/** A copy of the file as it is, under a name of its own: an older copy is never what is put back by mistake. */
function copyBefore(
  database: Database.Database,
  file: string,
  wanted: readonly Migration[],
): string {
  database.exec("PRAGMA wal_checkpoint(TRUNCATE)");
  const stem = `${file}.before-${wanted.at(-1)?.name ?? "update"}`;
  let copy = stem;
  for (let count = 2; existsSync(copy); count += 1) copy = `${stem}-${count}`;
  copyFileSync(file, copy);
  return copy;
}
