import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** Journeys in a real browser against the built pages; one server at a time. */
export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  test: {
    include: ["tests/browser/**/*.test.ts"],
    fileParallelism: false,
    // A browser on a busy machine misses a beat now and then; what is broken fails three times.
    retry: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
