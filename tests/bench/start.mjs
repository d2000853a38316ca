// The benches in the environment that the server runs in.
import { spawnSync } from "node:child_process";
import { ensureWorker, quietEnvironment, root } from "../../app/_start/install.mjs";

ensureWorker();
const { status } = spawnSync(
  process.execPath,
  ["--import", "tsx", "tests/bench/index.ts", ...process.argv.slice(2)],
  { cwd: root, env: quietEnvironment, stdio: "inherit" },
);
process.exit(status ?? 1);
