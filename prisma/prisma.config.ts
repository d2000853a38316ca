import { defineConfig } from "prisma/config";

// Generating the client needs no engine, but the command asks for one that this project never downloads.
if (process.argv.includes("generate")) {
  process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;
}

export default defineConfig({ schema: "schema.prisma", migrations: { path: "migrations" } });
