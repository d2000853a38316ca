import type { Conflict, PlanProblem } from "#lib/planner/index.ts";
import { takeWorker, warmUp } from "./worker-pool.ts";

/** Why nothing fits, found off this thread; undefined when something does. Throws when the worker fails. */
export async function conflictInWorker(problem: PlanProblem): Promise<Conflict | undefined> {
  const worker = await takeWorker();
  try {
    return await new Promise<Conflict | undefined>((resolve, reject) => {
      worker.onReply((reply) => {
        if (reply.kind === "conflict") resolve(reply.conflict);
        if (reply.kind === "failed") reject(new Error(`the solver stopped: ${reply.message}`));
      });
      worker.send({ kind: "conflict", problem }, []);
    });
  } finally {
    await worker.end();
    warmUp();
  }
}
