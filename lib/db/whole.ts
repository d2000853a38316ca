import { z } from "zod";
import type { Db } from "./client.ts";
import { insertRows } from "./bulk.ts";

/** Tables that are about this file and computer and not about the series. */
const LEFT_OUT = ["_prisma_migrations", "Session", "Attempt", "VerdictYear"];
/** Settings that let phones in begin like this: they never leave, and stay when another series comes. */
const ACCESS = "access.";

const Cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);

/** A whole series as one file: every table with its columns and rows. */
export const WholeSeries = z.object({
  noonbook: z.literal(1),
  /** The last migration that the file knows. */
  schema: z.string(),
  tables: z.record(
    z.string(),
    z.object({ columns: z.array(z.string()), rows: z.array(z.array(Cell)) }),
  ),
});
export type WholeSeries = z.infer<typeof WholeSeries>;

/** Why a file cannot become the series. */
export type WholeProblem =
  | { readonly kind: "newer"; readonly schema: string }
  | { readonly kind: "unknown"; readonly what: string }
  | { readonly kind: "does-not-fit" };

type Column = { readonly name: string; readonly type: string };

/** Everything of the series, row by row to the letter; photos are files beside the database and stay. */
export async function readWhole(db: Db): Promise<WholeSeries> {
  const tables: WholeSeries["tables"] = {};
  for (const [table, columns] of await readTables(db)) {
    // Instants are read as the text they are, so that they come back to the letter.
    const list = columns.map(({ name, type }) =>
      type === "DATETIME" ? `"${name}" || '' AS "${name}"` : `"${name}"`,
    );
    const where = table === "Setting" ? ` WHERE "key" NOT LIKE '${ACCESS}%'` : "";
    const rows = await db.$queryRawUnsafe<Record<string, unknown>[]>(
      `SELECT ${list.join(", ")} FROM "${table}"${where} ORDER BY 1, 2`,
    );
    tables[table] = {
      columns: columns.map(({ name }) => name),
      rows: rows.map((row) => columns.map(({ name }) => Cell.parse(plain(row[name])))),
    };
  }
  return { noonbook: 1, schema: await lastMigration(db), tables };
}

/** The tables that `readWhole` hands out, with how many rows each holds. */
export async function countTables(
  db: Db,
): Promise<readonly { readonly name: string; readonly rows: number }[]> {
  const names = [...(await readTables(db)).keys()].toSorted();
  return Promise.all(
    names.map(async (name) => {
      const where = name === "Setting" ? ` WHERE "key" NOT LIKE '${ACCESS}%'` : "";
      const [row] = await db.$queryRawUnsafe<{ rows: unknown }[]>(
        `SELECT COUNT(*) AS rows FROM "${name}"${where}`,
      );
      return { name, rows: Number(row?.rows) };
    }),
  );
}

/**
 * Puts a whole series in the place of what stands, in the transaction it is called in; the caller takes
 * that back when there is a problem. Columns that the file does not have take what the schema gives.
 */
export async function replaceWhole(db: Db, whole: WholeSeries): Promise<WholeProblem | undefined> {
  if (whole.schema > (await lastMigration(db))) return { kind: "newer", schema: whole.schema };
  const known = await readTables(db);
  for (const [table, { columns, rows }] of Object.entries(whole.tables)) {
    const own = known.get(table)?.map(({ name }) => name);
    const stranger = own ? columns.find((column) => !own.includes(column)) : table;
    if (stranger !== undefined) return { kind: "unknown", what: stranger };
    if (rows.some((row) => row.length !== columns.length)) return { kind: "does-not-fit" };
  }
  // Rows may point at later ones: what they point at is checked when the transaction ends.
  await db.$executeRawUnsafe("PRAGMA defer_foreign_keys=ON");
  for (const table of known.keys()) {
    const where = table === "Setting" ? ` WHERE "key" NOT LIKE '${ACCESS}%'` : "";
    await db.$executeRawUnsafe(`DELETE FROM "${table}"${where}`);
  }
  for (const [table, { columns, rows }] of Object.entries(whole.tables)) {
    const key = columns.indexOf("key");
    const kept = rows.filter(
      (row) => table !== "Setting" || !String(row[key] ?? "").startsWith(ACCESS),
    );
    await insertRows(
      db,
      table,
      kept.map((row) =>
        Object.fromEntries(columns.map((name, index) => [name, row[index] ?? null])),
      ),
    );
  }
  const broken = await db.$queryRawUnsafe<unknown[]>("PRAGMA foreign_key_check");
  return broken.length > 0 ? { kind: "does-not-fit" } : undefined;
}

/** Writes a copy of the whole database to a file that does not exist yet. */
export async function copyDatabase(db: Db, file: string): Promise<void> {
  await db.$executeRaw`VACUUM INTO ${file}`;
}

async function readTables(db: Db): Promise<Map<string, readonly Column[]>> {
  const names = await db.$queryRawUnsafe<{ name: string }[]>(
    `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`,
  );
  const tables = new Map<string, readonly Column[]>();
  for (const { name } of names) {
    if (LEFT_OUT.includes(name)) continue;
    const columns = await db.$queryRaw<Column[]>`
      SELECT name, type FROM pragma_table_info(${name}) ORDER BY cid`;
    tables.set(name, columns);
  }
  return tables;
}

async function lastMigration(db: Db): Promise<string> {
  const [row] = await db.$queryRawUnsafe<{ name: string | null }[]>(
    `SELECT max(migration_name) AS name FROM "_prisma_migrations"`,
  );
  return row?.name ?? "";
}

function plain(value: unknown): unknown {
  return typeof value === "bigint" ? Number(value) : value;
}
