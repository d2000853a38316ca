import { keepRecent } from "#lib/base/index.ts";
import type { Db } from "./client.ts";

type Kept = { stamp: string; values: Map<string, unknown> };

/** What was read through a client since anything was last written. A transaction is a client of its own. */
const keptBy = new WeakMap<Db, Kept>();

/** No more answers than this are kept for a client: the ones asked for least lately go. */
const KEPT_MOST = 96;

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
  const isFresh = kept?.stamp === stamp;
  if (isFresh && kept.values.has(key)) {
    return keepRecent(kept.values, key, kept.values.get(key), KEPT_MOST) as Value;
  }
  const value = await read();
  // What was written while reading makes the value old at once.
  if ((await writeStamp(db)) !== stamp) return value;
  // Another may have begun to keep since.
  const now = keptBy.get(db);
  const values = now?.stamp === stamp ? now.values : new Map<string, unknown>();
  keepRecent(values, key, value, KEPT_MOST);
  keptBy.set(db, { stamp, values });
  return value;
}

async function writeStamp(db: Db): Promise<string> {
  const [row] = await db.$queryRaw<readonly { own: unknown; others: unknown }[]>`
    SELECT total_changes() AS own, data_version AS others FROM pragma_data_version`;
  return `${String(row?.own)}:${String(row?.others)}`;
}
