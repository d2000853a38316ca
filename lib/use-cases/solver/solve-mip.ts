import type { MipAnswer, SolveMip } from "#lib/shopping/index.ts";
import { takeWorker, warmUp } from "./worker-pool.ts";

/**
 * The solver for programs in LP text, off this thread: each program gets a worker of its own, ended
 * afterwards, or at once by the signal. Throws when the worker fails or the signal comes first.
 */
export function mipInWorker(secondsMax: number, signal?: AbortSignal): SolveMip {
  return async (mip) => {
    const worker = await takeWorker();
    try {
      return await new Promise<MipAnswer>((resolve, reject) => {
        signal?.throwIfAborted();
        signal?.addEventListener("abort", () => reject(new Error("cancelled")), { once: true });
        worker.onReply((reply) => {
          if (reply.kind === "mip") resolve(reply.answer);
          if (reply.kind === "failed") reject(new Error(`the solver stopped: ${reply.message}`));
        });
        worker.send({ kind: "mip", mip, secondsMax }, []);
      });
    } finally {
      await worker.end();
      warmUp();
    }
  };
}
