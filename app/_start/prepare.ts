/** Brings the database up to date before the server opens it. */
import { mkdirSync } from "node:fs";
import { applyMigrations, MigrationRefused, openDatabase } from "#lib/db/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { dataFolder, databaseFile, migrationsFolder } from "../_server/places.ts";

try {
  mkdirSync(dataFolder(), { recursive: true });
  const outcome = applyMigrations(databaseFile(), migrationsFolder());
  if (outcome.copy) console.log(`The database was updated; the copy before it is ${outcome.copy}`);
  const db = openDatabase(databaseFile());
  await loadCatalogue(db, referenceCatalogue());
  await db.$disconnect();
} catch (problem) {
  if (problem instanceof MigrationRefused) console.error(problem.message);
  else console.error("The database could not be opened:", problem);
  process.exit(1);
}
