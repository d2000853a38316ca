import { parentPort } from "node:worker_threads";
import {
  boundAllThemes,
  boundMonth,
  findConflict,
  planMonth,
  proposePlan,
  USUAL_MONTH,
  type BoundLimits,
} from "#lib/planner/index.ts";
import { planRunsWithSolver, type SolveMip } from "#lib/shopping/index.ts";
import { loadSolver } from "./highs-solver.ts";
import { solveLp } from "./model-files.ts";
import { warmUpProblem } from "./warm-up-problem.ts";
import type { BoundOf, WorkerJob, WorkerReply } from "./worker-messages.ts";

// Entry of a worker thread: takes one job, answers, and is ended by whoever started it. Solving blocks
// this thread for seconds; nothing else runs here.

/** Item plans worked out before a week's runs go to the solver: usually two of its five seconds. */
const SEARCH_FIRST = { steps: 1_000_000, gap: 0 };

/** Looks at other themes; each takes two tenths of a second for a month of forty themes. */
const THEME_LOOKS_MAX = 50;
/** A larger tree takes memory for hardly a better bound. */
const LIMITS = { nodesMax: 200 };

type BoundJob = Extract<WorkerJob, { kind: "bound" }>;

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

async function plan({ problem, seed, peer }: Extract<WorkerJob, { kind: "plan" }>): Promise<void> {
  planMonth(problem, await solverLoading, { ...USUAL_MONTH, seed }, (step) => {
    reply({ kind: "step", step });
    if (step.kind === "themes") peer.postMessage(step.themeIds);
  });
}

async function runs(job: Extract<WorkerJob, { kind: "runs" }>): Promise<void> {
  const begun = performance.now();
  const solve: SolveMip = (mip) => {
    const spent = (performance.now() - begun) / 1000;
    return solveLp(mip, Math.max(1, job.secondsMax - spent));
  };
  reply({ kind: "runs", plan: await planRunsWithSolver(job.problem, solve, SEARCH_FIRST) });
}

/** The chosen themes with whole shops first: it settles most. Then all themes, then whole items. */
async function bound({ problem, secondsMax, peer }: BoundJob): Promise<void> {
  const solver = await solverLoading;
  const themeIds = await new Promise<readonly (string | null)[]>((resolve) => {
    peer.once("message", resolve);
  });
  const tell =
    (of: BoundOf) =>
    (found: number): void =>
      reply({ kind: "bound", of, bound: found });
  const ofChosen = (whole: BoundLimits["whole"]): number =>
    boundMonth(problem, themeIds, solver, { ...LIMITS, secondsMax, whole }, tell("chosen themes"));
  ofChosen("tours");
  boundAllThemes(problem, solver, { looksMax: THEME_LOOKS_MAX }, tell("all themes"));
  ofChosen("items");
}
