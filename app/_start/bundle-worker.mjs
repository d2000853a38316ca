// The planner's worker in one file. Loaded from its sources, every worker would bring a compiler of its
// own along: 40 MB each, and half a second.
import { build } from "esbuild";
import { root, workerFile } from "./install.mjs";

await build({
  absWorkingDir: root,
  entryPoints: ["lib/use-cases/solver/plan-worker.ts"],
  outfile: workerFile,
  bundle: true,
  platform: "node",
  format: "esm",
  target: "node20",
  // It finds its WebAssembly beside itself.
  external: ["highs"],
  logLevel: "warning",
});
