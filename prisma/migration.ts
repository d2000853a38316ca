/**
 * Writes the next migration from the schema: `npm run migration -- name`.
 * Prisma's own command needs an engine that cannot be fetched here, so the WebAssembly one is loaded by hand:
 * all committed migrations are applied to a temporary file, which is then compared with the schema.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import { PrismaLibSql } from "@prisma/adapter-libsql";
import * as bridge from "@prisma/schema-engine-wasm/schema_engine_bg";
import { applyMigrations } from "#lib/db/migrate.ts";

const name = process.argv[2];
if (!name || !/^[a-z0-9_]+$/.test(name)) {
  console.error("Say what changes: npm run migration -- add_something (small letters and _)");
  process.exit(1);
}

const root = path.resolve(import.meta.dirname, "..");
const temporary = mkdtempSync(path.join(tmpdir(), "noonbook-migration-"));
try {
  const file = path.join(temporary, "shadow.db");
  applyMigrations(file, path.join(root, "prisma/migrations"));
  const sql = await difference(`file:${file}`, path.join(root, "prisma/schema.prisma"));
  if (sql === undefined) {
    console.log("The migrations already give the schema. Nothing was written.");
  } else {
    const folder = path.join(root, "prisma/migrations", `${nextNumber()}_${name}`);
    mkdirSync(folder, { recursive: true });
    writeFileSync(path.join(folder, "migration.sql"), sql);
    console.log(
      `Wrote ${path.relative(root, folder)}/migration.sql. Read it before you commit it.`,
    );
  }
} finally {
  rmSync(temporary, { recursive: true, force: true });
}

/** Four digits, one more than the last folder has. */
function nextNumber(): string {
  const folder = path.join(root, "prisma/migrations");
  mkdirSync(folder, { recursive: true });
  const numbers = readdirSync(folder)
    .map((entry) => Number(entry.slice(0, 4)))
    .filter(Number.isInteger);
  return String(Math.max(0, ...numbers) + 1).padStart(4, "0");
}

/** The SQL that leads from a database to the schema; undefined when they agree. */
async function difference(url: string, schemaFile: string): Promise<string | undefined> {
  const location = import.meta.resolve("@prisma/schema-engine-wasm/schema_engine_bg");
  const wasm = readFileSync(new URL("schema_engine_bg.wasm", location));
  const { instance } = await WebAssembly.instantiate(wasm, {
    "./schema_engine_bg.js": bridge,
  });
  bridge.__wbg_set_wasm(instance.exports);
  (instance.exports as { __wbindgen_start: () => void }).__wbindgen_start();

  const content = readFileSync(schemaFile, "utf8");
  const schema = { files: [{ path: schemaFile, content }], configDir: path.dirname(schemaFile) };
  const engine = await bridge.SchemaEngine.new(
    { datamodels: [[schemaFile, content]] } as never,
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(new PrismaLibSql({ url })),
  );
  const { exitCode, stdout } = (await engine.diff({
    from: { tag: "schemaDatasource", ...schema },
    to: { tag: "schemaDatamodel", ...schema },
    script: true,
    exitCode: true,
    shadowDatabaseUrl: null,
    filters: { externalTables: [], externalEnums: [] },
  } as never)) as { exitCode: number; stdout: string };
  return exitCode === 0 ? undefined : stdout;
}
