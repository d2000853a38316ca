import { parentPort, receiveMessageOnPort } from "node:worker_threads";
import {
  allThemeBounds,
  findConflict,
  placeAsAsked,
  planMonth,
  proposePlan,
  USUAL_MONTH,
  type Mate,
  type Placing,
} from "#lib/planner/index.ts";
import { planRunsWithSolver, type SolveMip } from "#lib/shopping/index.ts";
import { loadSolver } from "./highs-solver.ts";
import { solveLp } from "./model-files.ts";
import { warmUpProblem } from "./warm-up-problem.ts";
import type { MateJob, PlanJob, WorkerJob, WorkerReply } from "./worker-messages.ts";

// Entry of a worker thread: takes one job, answers, and is ended by whoever started it. Solving blocks
// this thread for seconds; nothing else runs here.

/** Item plans worked out before a week's runs go to the solver: usually two of its five seconds. */
const SEARCH_FIRST = { steps: 1_000_000, gap: 0 };

/** Looks at other themes; each takes two tenths of a second for a month of forty themes. */
const THEME_LOOKS_MAX = 50;
const solverLoading = loadSolver();
// Compiles the search before the first job: the first plan should not wait for it.
proposePlan(warmUpProblem(), { seed: "warm-up", steps: 20_000 });
await solverLoading;

parentPort?.once("message", (job: WorkerJob) => void run(job));
reply({ kind: "ready" });

async function run(job: WorkerJob): Promise<void> {
  try {
    if (job.kind === "plan") await plan(job);
    else if (job.kind === "mate") await mate(job);
    else if (job.kind === "conflict")
      reply({ kind: "conflict", conflict: findConflict(job.problem, await solverLoading) });
    else if (job.kind === "runs") await runs(job);
    else reply({ kind: "mip", answer: await solveLp(job.mip, job.secondsMax) });
    reply({ kind: "done" });
  } catch (error) {
    reply({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
  }
}

function reply(message: WorkerReply): void {
  parentPort?.postMessage(message);
}

async function plan({ problem, seed, peer, bell }: PlanJob): Promise<void> {
  const mate: Mate = {
    start: (placing) => peer.postMessage(placing),
    collect: () => {
      const isRung = new Int32Array(bell);
      for (;;) {
        const received = receiveMessageOnPort(peer) as { message: Int32Array | null } | undefined;
        if (received) return received.message;
        // The bell is rung after the message is there, so this never sleeps past it.
        Atomics.wait(isRung, 0, 0);
        Atomics.store(isRung, 0, 0);
      }
    },
  };
  planMonth(problem, await solverLoading, { ...USUAL_MONTH, seed, mate }, (step) =>
    reply({ kind: "step", step }),
  );
}

/** Bounds over all themes, one look after another; as soon as it is asked for them, placements first. */
async function mate({ problem, peer, bell }: MateJob): Promise<void> {
  const solver = await solverLoading;
  const answer = (placing: Placing): void => {
    const found = placeAsAsked(problem, solver, placing, (plan) =>
      reply({ kind: "step", step: { kind: "plan", ...plan } }),
    );
    peer.postMessage(found);
    const isRung = new Int32Array(bell);
    Atomics.store(isRung, 0, 1);
    Atomics.notify(isRung, 0);
  };
  for (const bound of allThemeBounds(problem, solver, { looksMax: THEME_LOOKS_MAX })) {
    reply({ kind: "bound", bound });
    const received = receiveMessageOnPort(peer) as { message: Placing } | undefined;
    if (received) answer(received.message);
  }
  // Whoever started this thread ends it.
  await new Promise(() => peer.on("message", answer));
}

async function runs(job: Extract<WorkerJob, { kind: "runs" }>): Promise<void> {
  const begun = performance.now();
  const solve: SolveMip = (mip) => {
    const spent = (performance.now() - begun) / 1000;
    return solveLp(mip, Math.max(1, job.secondsMax - spent));
  };
  reply({ kind: "runs", plan: await planRunsWithSolver(job.problem, solve, SEARCH_FIRST) });
}
