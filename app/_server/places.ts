import path from "node:path";

/** The folder of everything the user makes: `NOONBOOK_DATA`, or `data` in the project. */
export function dataFolder(): string {
  return path.resolve(
    /* turbopackIgnore: true */ process.env["NOONBOOK_DATA"] ?? path.join(process.cwd(), "data"),
  );
}

/** The one database file. */
export function databaseFile(): string {
  return path.join(/* turbopackIgnore: true */ dataFolder(), "noonbook.db");
}

/** The committed migrations. */
export function migrationsFolder(): string {
  return path.resolve(/* turbopackIgnore: true */ process.cwd(), "prisma/migrations");
}

/** The photos, cleaned copies and thumbnails. */
export function photosFolder(): string {
  return path.join(/* turbopackIgnore: true */ dataFolder(), "photos");
}
