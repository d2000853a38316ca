import { PrismaLibSql } from "@prisma/adapter-libsql";

type Config = ConstructorParameters<typeof PrismaLibSql>[0];

/**
 * The driver of one database file, over one connection.
 * The stock adapter opens a connection for each transaction, which leaks descriptors and loses pragmas;
 * this one stays on the connection it has, and the adapter's own mutex keeps others out meanwhile.
 */
export class Sqlite extends PrismaLibSql {
  constructor(file: string) {
    super({ url: `file:${file}`, timeout: 5000 });
  }

  override createClient(config: Config): ReturnType<PrismaLibSql["createClient"]> {
    const client = super.createClient(config);
    client.transaction = (async () => {
      await client.execute("BEGIN IMMEDIATE");
      return {
        execute: client.execute.bind(client),
        commit: () => client.execute("COMMIT"),
        rollback: () => client.execute("ROLLBACK"),
      };
    }) as unknown as typeof client.transaction;
    return client;
  }

  override async connect(): ReturnType<PrismaLibSql["connect"]> {
    const adapter = await super.connect();
    await adapter.executeScript(
      "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON; PRAGMA busy_timeout=5000",
    );
    return adapter;
  }
}
