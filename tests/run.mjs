// `npm test`: installs what is missing, runs every test there is, ends with one line of counts.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
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
} from "../app/_start/install.mjs";

requireNode();
ensureInstalled();
ensureGenerated();
ensureWorker();
const chromium = ensureChromium();
ensureBuilt();

const reports = path.join(root, ".noonbook/reports");
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

const runs = [
  suite("core", "tests/config/vitest.config.ts"),
  suite("browser", "tests/config/vitest.browser.config.ts"),
];
const passed = sum("passed");
const failed = sum("failed") + runs.filter((one) => one.broken).length;
const skipped = sum("skipped");
say(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
// A run that ran nothing has shown nothing.
process.exit(failed > 0 || passed === 0 ? 1 : 0);

/** Runs one vitest configuration; `broken` when it failed without a failing test to show for it. */
function suite(name, config) {
  const report = path.join(reports, `${name}.json`);
  const result = spawnSync(
    process.execPath,
    [
      path.join(root, "node_modules/vitest/vitest.mjs"),
      "run",
      "--config",
      config,
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    {
      cwd: root,
      env: { ...quietEnvironment, CHROMIUM_PATH: chromium },
      stdio: ["ignore", "inherit", "inherit"],
    },
  );
  const counts = existsSync(report) ? JSON.parse(readFileSync(report, "utf8")) : {};
  const numbers = {
    passed: counts.numPassedTests ?? 0,
    failed: counts.numFailedTests ?? 0,
    skipped: (counts.numPendingTests ?? 0) + (counts.numTodoTests ?? 0),
  };
  return { ...numbers, broken: result.status !== 0 && numbers.failed === 0 };
}

function sum(key) {
  return runs.reduce((total, run) => total + run[key], 0);
}

/** A Chromium to drive: in the usual places, else from Debian when that is allowed, else a clear end. */
function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  if (process.platform === "linux" && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    say("Installing Chromium for the browser tests …");
    const quiet = {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    };
    spawnSync("apt-get", ["update", "-qq"], quiet);
    spawnSync("apt-get", ["install", "-y", "-qq", "chromium"], quiet);
  }
  return (
    findChromium() ??
    fail("The browser tests need Chromium. Install it, or set CHROMIUM_PATH to where it is.")
  );
}

function findChromium() {
  const places = [
    process.env.CHROMIUM_PATH,
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/snap/bin/chromium",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
  ];
  return places.find((place) => place && existsSync(place));
}
