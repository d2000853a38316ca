import { spawn, spawnSync, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";

const root = path.resolve(import.meta.dirname, "../..");

export type RunningServer = {
  readonly url: string;
  readonly stop: () => void;
  /** Ends the process at once, as a power cut would; the data stays. */
  readonly crash: () => Promise<void>;
  /** Starts it again on the same port and data. */
  readonly restart: () => Promise<void>;
};

/** Starts the built pages on a free port, with an empty data folder of their own unless one is named. */
export async function startServer(
  today = "2026-03-11",
  data = mkdtempSync(path.join(tmpdir(), "noonbook-browser-")),
): Promise<RunningServer> {
  const env = {
    ...process.env,
    NOONBOOK_DATA: data,
    NOONBOOK_TODAY: today,
    NEXT_TELEMETRY_DISABLED: "1",
    CHECKPOINT_DISABLE: "1",
  };
  const prepared = spawnSync(process.execPath, ["--import", "tsx", "app/_start/prepare.ts"], {
    cwd: root,
    env,
    encoding: "utf8",
  });
  if (prepared.status !== 0) throw new Error(`The database was not prepared: ${prepared.stderr}`);
  const port = await freePort();
  const next = path.join(root, "node_modules/next/dist/bin/next");
  const url = `http://127.0.0.1:${port}`;
  const serve = (): ChildProcess =>
    spawn(process.execPath, [next, "start", "-H", "127.0.0.1", "-p", String(port)], {
      cwd: root,
      env,
      stdio: ["ignore", "ignore", "inherit"],
    });
  let child = serve();
  const stop = (): void => {
    child.kill("SIGKILL");
    rmSync(data, { recursive: true, force: true });
  };
  process.once("exit", stop);
  const crash = (): Promise<void> =>
    new Promise((resolve) => {
      child.once("exit", () => {
        resolve();
      });
      child.kill("SIGKILL");
    });
  const restart = async (): Promise<void> => {
    child = serve();
    await answered(url, child);
  };
  await answered(url, child);
  return { url, stop, crash, restart };
}

async function answered(url: string, child: ChildProcess): Promise<void> {
  while (child.exitCode === null) {
    try {
      await fetch(`${url}/icon.svg`);
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  throw new Error("The server stopped before it answered.");
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      const port = typeof address === "object" && address ? address.port : 0;
      probe.close(() => {
        resolve(port);
      });
    });
  });
}
