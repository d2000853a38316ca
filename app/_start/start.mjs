// `npm start`: everything a fresh clone lacks, then the server, its address printed last.
import { spawn, spawnSync } from "node:child_process";
import { createServer } from "node:net";
import path from "node:path";
import {
  ensureBuilt,
  ensureGenerated,
  ensureInstalled,
  ensureWorker,
  fail,
  quietEnvironment,
  requireNode,
  root,
  say,
} from "./install.mjs";

const HOST = "127.0.0.1";
const wanted = process.env.PORT ?? "4310";
const port = Number(wanted);
const isDev = process.argv.includes("--dev");
const isShared = process.argv.includes("--share");
const isEncrypted = process.argv.includes("--https");
const scheme = isEncrypted ? "https" : "http";

requireNode();
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  fail(`PORT is “${wanted}”, which is no port. Use a number from 1 to 65535.`);
}
const isBuildOnly = process.argv.includes("--build-only");
if (!isBuildOnly && !(await isFree(port))) {
  fail(
    `Port ${port} is taken, perhaps by another Noonbook. Stop that, or start with another: PORT=${port + 1} npm start`,
  );
}
ensureInstalled();
ensureGenerated();
ensureWorker();
if (!isDev) ensureBuilt();
if (isBuildOnly) process.exit(0);
if (isEncrypted && !isShared) fail("--https belongs to --share: npm start -- --share --https");
runFirst("app/_start/prepare.ts");
if (isShared) runFirst("app/_start/share.ts", "ask");
await serve();

function runFirst(file, ...words) {
  const result = spawnSync(process.execPath, ["--import", "tsx", file, ...words], {
    cwd: root,
    env: quietEnvironment,
    stdio: "inherit",
  });
  if (result.status !== 0) process.exit(result.status ?? 1);
}

async function serve() {
  const next = path.join(root, "node_modules/next/dist/bin/next");
  const server = spawn(
    process.execPath,
    [next, isDev ? "dev" : "start", "-H", HOST, "-p", String(port)],
    {
      cwd: root,
      env: isShared
        ? { ...quietEnvironment, NOONBOOK_SHARED: `${scheme}:${port}` }
        : quietEnvironment,
      stdio: ["ignore", isDev ? "inherit" : "ignore", "inherit"],
    },
  );
  const children = [server];
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) {
    process.on(signal, () => children.forEach((child) => child.kill(signal)));
  }
  process.on("exit", () => children.forEach((child) => child.kill()));
  server.on("exit", (code, signal) => process.exit(code ?? (signal ? 0 : 1)));
  await answered();
  if (isShared) children.push(openGate());
  say(`Noonbook is open at http://${HOST}:${port}`);
}

/** The gate prints its own addresses; when it stops, the computer itself is still served. */
function openGate() {
  return spawn(
    process.execPath,
    ["--import", "tsx", "app/_start/share.ts", "open", String(port), scheme],
    { cwd: root, env: quietEnvironment, stdio: ["ignore", "inherit", "inherit"] },
  );
}

/** Waits until the server answers at all. */
async function answered() {
  for (;;) {
    try {
      await fetch(`http://${HOST}:${port}/icon.svg`, { signal: AbortSignal.timeout(20_000) });
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
}

function isFree(candidate) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(candidate, HOST, () => probe.close(() => resolve(true)));
  });
}
