import { mkdirSync, rmSync } from "node:fs";
import path from "node:path";
import { applyMigrations, openDatabase } from "#lib/db/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";

export const templateFolder = path.resolve(import.meta.dirname, "../../.noonbook/tests");
export const templateFile = path.join(templateFolder, "template.db");

/** Builds the migrated database with the catalogue once; each test copies the file. */
export default async function setup(): Promise<() => void> {
  rmSync(templateFolder, { recursive: true, force: true });
  mkdirSync(templateFolder, { recursive: true });
  applyMigrations(templateFile, path.resolve(import.meta.dirname, "../../prisma/migrations"));
  const db = openDatabase(templateFile);
  await loadCatalogue(db, referenceCatalogue());
  await db.$executeRawUnsafe("VACUUM");
  await db.$queryRawUnsafe("PRAGMA wal_checkpoint(TRUNCATE)");
  await db.$disconnect();
  return () => {
    rmSync(templateFolder, { recursive: true, force: true });
  };
}
