import Libsql from "libsql";

/** What a statement may be handed, as it is kept. */
export type Cell = string | number | null;
export type Statement = { readonly sql: string; readonly cells: readonly Cell[] };
/** Reads the rows of a statement, or runs one that writes. */
export type AtOnce = {
  readonly read: (statement: Statement) => readonly unknown[];
  readonly write: (statement: Statement) => void;
};

type Hand = {
  readonly raw: InstanceType<typeof Libsql>;
  readonly prepared: Map<string, ReturnType<InstanceType<typeof Libsql>["prepare"]>>;
};
/** By client. */
const fileOf = new WeakMap<object, string>();
const handOf = new WeakMap<object, Hand>();

/** Remembers where a database lies, so that `atOnce` can reach it. */
export function knowFile(db: object, file: string): void {
  fileOf.set(db, file);
}

/**
 * Runs reads and writes in one transaction without once waiting, over a connection of its own: a third of
 * what the way round costs. All of it is kept, or none. Undefined when another holds the file, or when
 * where it lies is not known: then nothing was done, and the caller takes the way round. It must not wait
 * for the other connection of this process, which cannot go on meanwhile.
 */
export function atOnce<Value>(db: object, work: (hand: AtOnce) => Value): Value | undefined {
  const file = fileOf.get(db);
  if (file === undefined) return undefined;
  const { raw, prepared } = handFor(db, file);
  const statement = (sql: string) => {
    const known = prepared.get(sql) ?? raw.prepare(sql);
    prepared.set(sql, known);
    return known;
  };
  try {
    statement("BEGIN IMMEDIATE").run([]);
  } catch (error) {
    if (isBusy(error)) return undefined;
    throw error;
  }
  try {
    const value = work({
      read: ({ sql, cells }) => statement(sql).all([...cells]),
      write: ({ sql, cells }) => void statement(sql).run([...cells]),
    });
    statement("COMMIT").run([]);
    return value;
  } catch (error) {
    if (raw.inTransaction) statement("ROLLBACK").run([]);
    throw error;
  }
}

function handFor(db: object, file: string): Hand {
  const known = handOf.get(db);
  if (known) return known;
  const raw = new Libsql(file);
  raw.exec("PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA busy_timeout=0");
  const hand: Hand = { raw, prepared: new Map() };
  handOf.set(db, hand);
  return hand;
}

function isBusy(error: unknown): boolean {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return code.startsWith("SQLITE_BUSY");
}
