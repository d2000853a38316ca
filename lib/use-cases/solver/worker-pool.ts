import path from "node:path";
import { Worker, type TransferListItem } from "node:worker_threads";
import type { WorkerJob, WorkerReply } from "./worker-messages.ts";

/** A worker that has loaded the planner and the solver and waits for its one job. */
export type ReadyWorker = {
  readonly onReply: (listen: (reply: WorkerReply) => void) => void;
  readonly send: (job: WorkerJob, transfer: readonly TransferListItem[]) => void;
  readonly end: () => Promise<void>;
};

/**
 * Workers in waiting, so that a first plan does not wait for one to load. One set for the process: a
 * server evaluates its modules more than once. Each worker serves one job and ends, since the solver's
 * memory grows with a solve and never shrinks.
 */
const waiting: Promise<ReadyWorker>[] = shared("noonbook.solver.waiting", () => []);

/**
 * A worker's own heap, besides the solver's memory: a month's programs are a few megabytes each, and a
 * small nursery keeps those that were let go from piling up.
 */
const HEAP = { maxYoungGenerationSizeMb: 8, maxOldGenerationSizeMb: 192 } as const;

/** Loads workers ahead; the page where planning starts may call it. */
export function warmUp(count = 2): void {
  while (waiting.length < count) waiting.push(startWorker());
}

/** A ready worker, from those in waiting or a fresh one. */
export function takeWorker(): Promise<ReadyWorker> {
  return waiting.shift() ?? startWorker();
}

/** Ends the workers in waiting: before a test process or a server stops. */
export async function endWaiting(): Promise<void> {
  const ending = waiting.splice(0);
  await Promise.all(ending.map(async (worker) => (await worker).end()));
}

function startWorker(): Promise<ReadyWorker> {
  // By path from the project's root, not from this module: a bundler moves modules, and must not
  // swallow the worker. The file is made by app/_start/bundle-worker.mjs.
  const root = process.cwd();
  const file = path.join(
    /* turbopackIgnore: true */ root,
    "node_modules/.noonbook/plan-worker.mjs",
  );
  const worker = new Worker(file, { execArgv: [], resourceLimits: HEAP });
  worker.unref();
  return new Promise((resolve, reject) => {
    worker.once("error", reject);
    worker.once("message", () => {
      resolve({
        onReply: (listen) => {
          worker.on("message", listen);
          worker.on("error", (error) => listen({ kind: "failed", message: error.message }));
        },
        send: (job, transfer) => {
          worker.ref();
          worker.postMessage(job, transfer);
        },
        end: async () => void (await worker.terminate()),
      });
    });
  });
}

function shared<Value>(name: string, make: () => Value): Value {
  const store = globalThis as unknown as Record<symbol, Value | undefined>;
  return (store[Symbol.for(name)] ??= make());
}
