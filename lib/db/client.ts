import { PrismaClient, type Prisma } from "./generated/client.ts";
import { knowFile } from "./at-once.ts";
import { Sqlite } from "./sqlite.ts";

/** The database as use cases see it: the whole client, or a transaction of it. */
export type Db = Prisma.TransactionClient;
/** The whole client, which can open transactions. */
export type Database = PrismaClient;

/** Opens a database file that `applyMigrations` has brought up to date. */
export function openDatabase(file: string): Database {
  const client = new PrismaClient({
    adapter: new Sqlite(file),
    transactionOptions: { maxWait: 15_000, timeout: 30_000 },
  });
  knowFile(client, file);
  return client;
}

/** Runs reads and writes as one: all of it is kept, or none. Use only the handed-in client inside. */
export function inTransaction<Value>(
  database: Database,
  work: (db: Db) => Promise<Value>,
): Promise<Value> {
  return database.$transaction(work);
}
