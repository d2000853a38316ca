import type { RunPlan, RunProblem } from "#lib/shopping/index.ts";
import { takeWorker, warmUp } from "./worker-pool.ts";

/**
 * A week's runs planned off this thread: trip sets are searched first, and what is not proven is
 * handed to the mixed-integer solver for the rest of `secondsMax`. Throws when the worker fails.
 */
export async function planRunsInWorker(problem: RunProblem, secondsMax: number): Promise<RunPlan> {
  const worker = await takeWorker();
  try {
    return await new Promise<RunPlan>((resolve, reject) => {
      worker.onReply((reply) => {
        if (reply.kind === "runs") resolve(reply.plan);
        if (reply.kind === "failed") reject(new Error(`the solver stopped: ${reply.message}`));
      });
      worker.send({ kind: "runs", problem, secondsMax }, []);
    });
  } finally {
    await worker.end();
    warmUp();
  }
}
