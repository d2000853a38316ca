import type { Db } from "./client.ts";

type Kept = { stamp: string; values: Map<string, unknown> };

/** What was read through a client since anything was last written. A transaction is a client of its own. */
const keptBy = new WeakMap<Db, Kept>();

/** No more answers than this are kept for a client. */
const KEPT_MOST = 24;

/**
 * What `read` answers, kept under a key until anything is written to the file: by this connection
 * (SQLite's total_changes) or by another (its data_version). For what every page reads and few change.
 * The value is shared: nobody may change it.
 */
export async function keepUntilWritten<Value>(
  db: Db,
  key: string,
  read: () => Promise<Value>,
): Promise<Value> {
  const stamp = await writeStamp(db);
  const kept = keptBy.get(db);
  const isFresh = kept?.stamp === stamp && kept.values.size < KEPT_MOST;
  if (isFresh && kept.values.has(key)) return kept.values.get(key) as Value;
  const value = await read();
  // What was written while reading makes the value old at once.
  if ((await writeStamp(db)) !== stamp) return value;
  const values = isFresh ? kept.values : new Map<string, unknown>();
  values.set(key, value);
  keptBy.set(db, { stamp, values });
  return value;
}

async function writeStamp(db: Db): Promise<string> {
  const [row] = await db.$queryRaw<readonly { own: unknown; others: unknown }[]>`
    SELECT total_changes() AS own, data_version AS others FROM pragma_data_version`;
  return `${String(row?.own)}:${String(row?.others)}`;
}
