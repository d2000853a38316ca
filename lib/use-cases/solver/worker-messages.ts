import type { MessagePort } from "node:worker_threads";
import type { Conflict, PlanProblem, PlanStep } from "#lib/planner/index.ts";
import type { Mip, MipAnswer, RunPlan, RunProblem } from "#lib/shopping/index.ts";

/** What a worker is told, once in its life. `peer` leads to the other worker of the pair. */
export type WorkerJob =
  | {
      readonly kind: "plan";
      readonly problem: PlanProblem;
      readonly seed: string;
      readonly peer: MessagePort;
    }
  | {
      readonly kind: "bound";
      readonly problem: PlanProblem;
      readonly secondsMax: number;
      readonly peer: MessagePort;
    }
  | { readonly kind: "conflict"; readonly problem: PlanProblem }
  | { readonly kind: "mip"; readonly mip: Mip; readonly secondsMax: number }
  | { readonly kind: "runs"; readonly problem: RunProblem; readonly secondsMax: number };

/** Plans a bound holds for: those with the chosen themes, or all. */
export type BoundOf = "chosen themes" | "all themes";

/** What a worker tells. */
export type WorkerReply =
  | { readonly kind: "ready" }
  | { readonly kind: "step"; readonly step: PlanStep }
  | { readonly kind: "bound"; readonly of: BoundOf; readonly bound: number }
  | { readonly kind: "conflict"; readonly conflict: Conflict | undefined }
  | { readonly kind: "mip"; readonly answer: MipAnswer }
  | { readonly kind: "runs"; readonly plan: RunPlan }
  | { readonly kind: "done" }
  | { readonly kind: "failed"; readonly message: string };
