import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** Everything that needs no browser: unit, property and integration tests. */
export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  test: {
    include: ["tests/{unit,property,integration}/**/*.test.{ts,tsx}"],
    globalSetup: ["tests/support/template-database.ts", "tests/support/worker-bundle.mjs"],
    setupFiles: ["tests/support/steady-seeds.ts"],
    isolate: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
