import { stringify } from "csv-stringify/sync";
import { countTables, inTransaction, readWhole } from "#lib/db/index.ts";
import type { Context } from "../context.ts";

/** The names of the record tables, in order, with how many rows each holds. */
export function listTables({ db }: Pick<Context, "db">): ReturnType<typeof countTables> {
  return countTables(db);
}

/**
 * One record table as comma-separated values by RFC 4180, its columns named in the first line, or undefined
 * when there is none of that name. Nothing is left out, private names included.
 */
export async function exportTable(
  { db }: Pick<Context, "db">,
  name: string,
): Promise<string | undefined> {
  const { tables } = await inTransaction(db, readWhole);
  const table = Object.hasOwn(tables, name) ? tables[name] : undefined;
  if (!table) return undefined;
  return stringify([table.columns, ...table.rows], {
    record_delimiter: "\r\n",
    cast: { boolean: (value) => (value ? "true" : "false") },
  });
}
