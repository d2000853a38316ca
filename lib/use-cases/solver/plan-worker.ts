import { parentPort, receiveMessageOnPort, type MessagePort } from "node:worker_threads";
import {
  boundMonth,
  planMonth,
  proposePlan,
  USUAL_MONTH,
  type BoundEvent,
  type ItemsHint,
} from "#lib/planner/index.ts";
import { planRunsWithSolver, type SolveMip } from "#lib/shopping/index.ts";
import { loadSolver } from "./highs-solver.ts";
import { solveLp } from "./model-files.ts";
import { warmUpProblem } from "./warm-up-problem.ts";
import type { WorkerJob, WorkerReply } from "./worker-messages.ts";

// Entry of a worker thread: takes one job, answers, and is ended by whoever started it. Solving blocks
// this thread for seconds; nothing else runs here.

/** Item plans worked out before a week's runs go to the solver; two of its five seconds. */
const SEARCH_FIRST = { steps: 200_000, gap: 0 };

const solverLoading = loadSolver();
// Compiles the search before the first job: the first plan should not wait for it.
proposePlan(warmUpProblem(), { seed: "warm-up", steps: 20_000 });
await solverLoading;

parentPort?.once("message", (job: WorkerJob) => void run(job));
reply({ kind: "ready" });

async function run(job: WorkerJob): Promise<void> {
  try {
    if (job.kind === "plan") await plan(job);
    else if (job.kind === "bound") await bound(job);
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

async function plan(job: Extract<WorkerJob, { kind: "plan" }>): Promise<void> {
  const steps = planMonth(job.problem, await solverLoading, { ...USUAL_MONTH, seed: job.seed });
  let hint: ItemsHint | undefined;
  for (let next = steps.next(); !next.done; next = steps.next(hint)) {
    reply({ kind: "step", step: next.value });
    if (next.value.kind === "themes") job.peer.postMessage(next.value.themeIds);
    hint = lastHint(job.peer) ?? hint;
  }
}

/** The newest hint the other worker has sent meanwhile. */
function lastHint(peer: MessagePort): ItemsHint | undefined {
  let hint: ItemsHint | undefined;
  for (let got = receiveMessageOnPort(peer); got; got = receiveMessageOnPort(peer)) {
    const event = got.message as BoundEvent;
    if (event.kind === "hint") hint = event.hint;
  }
  return hint;
}

async function runs(job: Extract<WorkerJob, { kind: "runs" }>): Promise<void> {
  const solve: SolveMip = (mip) => solveLp(mip, job.secondsMax);
  reply({ kind: "runs", plan: await planRunsWithSolver(job.problem, solve, SEARCH_FIRST) });
}

async function bound(job: Extract<WorkerJob, { kind: "bound" }>): Promise<void> {
  const solver = await solverLoading;
  const themeIds = await new Promise<readonly (string | null)[]>((resolve) => {
    job.peer.once("message", resolve);
  });
  boundMonth(job.problem, themeIds, solver, { secondsMax: job.secondsMax }, (event) => {
    if (event.kind === "bound") reply({ kind: "bound", bound: event.bound });
    else job.peer.postMessage(event);
  });
}
