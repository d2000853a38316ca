// What a fresh clone lacks, made in order and skipped when fresh. Node built-ins only: nothing is installed yet.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const stamps = path.join(root, "node_modules/.noonbook");

/** Where the planner's worker is started from: lib/use-cases/solver/worker-pool.ts. */
export const workerFile = path.join(stamps, "plan-worker.mjs");

/**
 * Environment of every child: no phoning home, no download of engines. The C library gives memory back
 * sooner: what a solver's threads have let go would else stay with the process.
 */
export const quietEnvironment = {
  MALLOC_ARENA_MAX: "2",
  MALLOC_TRIM_THRESHOLD_: "131072",
  ...process.env,
  CHECKPOINT_DISABLE: "1",
  NEXT_TELEMETRY_DISABLED: "1",
  PRISMA_HIDE_UPDATE_MESSAGE: "1",
};

/** Stops with a plain line when Node is too old. */
export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < 20 || (major === 20 && minor < 19)) {
    fail(`Noonbook needs Node 20.19 or newer; this is ${process.versions.node}.`);
  }
}

/** Installs the locked packages. Install scripts stay off: everything works without them. */
export function ensureInstalled() {
  const key = hashOf(["package-lock.json", "package.json"], process.version);
  if (isFresh("install", key)) return;
  say("Installing packages (about a minute the first time) …");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  run(npm, ["ci", "--include=dev", "--ignore-scripts", "--no-audit", "--no-fund"], "Installing");
  stamp("install", key);
}

/** Generates the database client from the schema. */
export function ensureGenerated() {
  const key = hashOf(["prisma/schema.prisma", "prisma/prisma.config.ts", "package-lock.json"]);
  if (isFresh("generate", key) && existsSync(path.join(root, "lib/db/generated/client.ts"))) return;
  say("Generating the database client …");
  runNode("node_modules/prisma/build/index.js", [
    "generate",
    "--config",
    "prisma/prisma.config.ts",
  ]);
  stamp("generate", key);
}

/** Bundles the planner's worker. */
export function ensureWorker() {
  const key = hashOf(["lib", "package-lock.json", "app/_start/bundle-worker.mjs"]);
  if (isFresh("worker", key) && existsSync(workerFile)) return;
  runNode("app/_start/bundle-worker.mjs", []);
  stamp("worker", key);
}

/** Builds the pages when a source file changed since the last build. */
export function ensureBuilt() {
  const key = hashOf([
    "app",
    "lib",
    "seed",
    "prisma/schema.prisma",
    "package-lock.json",
    "next.config.ts",
    "tsconfig.json",
  ]);
  if (isFresh("build", key) && existsSync(path.join(root, ".next/BUILD_ID"))) return;
  say("Building the pages …");
  runNode("node_modules/next/dist/bin/next", ["build"]);
  stamp("build", key);
}

/** One line to the person at the terminal. */
export function say(line) {
  process.stdout.write(`${line}\n`);
}

/** A clear line and the end. */
export function fail(line) {
  process.stderr.write(`${line}\n`);
  process.exit(1);
}

/** Runs a Node program of the project, shows its output only when it fails. */
export function runNode(file, args) {
  run(process.execPath, [path.join(root, file), ...args], path.basename(path.dirname(file)));
}

function run(command, args, what) {
  const result = spawnSync(command, args, {
    cwd: root,
    env: quietEnvironment,
    encoding: "utf8",
    shell: process.platform === "win32",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (result.status !== 0) {
    process.stderr.write(`${result.stdout ?? ""}${result.stderr ?? ""}\n`);
    fail(`${what} did not work; what it said stands above.`);
  }
}

function isFresh(name, key) {
  const file = path.join(stamps, name);
  return existsSync(file) && readFileSync(file, "utf8") === key;
}

function stamp(name, key) {
  mkdirSync(stamps, { recursive: true });
  writeFileSync(path.join(stamps, name), key);
}

/** Hash of files and folders by path and content; what git ignores inside them is left out. */
function hashOf(entries, extra = "") {
  const hash = createHash("sha256").update(extra);
  for (const entry of entries) addTo(hash, path.join(root, entry));
  return hash.digest("hex");
}

function addTo(hash, file) {
  if (!existsSync(file) || file.endsWith(`db${path.sep}generated`)) return;
  let children;
  try {
    children = readdirSync(file, { withFileTypes: true });
  } catch {
    hash.update(path.relative(root, file)).update(readFileSync(file));
    return;
  }
  for (const child of children.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    addTo(hash, path.join(file, child.name));
  }
}
