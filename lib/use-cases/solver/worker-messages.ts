import type { MessagePort } from "node:worker_threads";
import type { Conflict, PlanProblem, PlanStep } from "#lib/planner/index.ts";
import type { Mip, MipAnswer, RunPlan, RunProblem } from "#lib/shopping/index.ts";

/**
 * One of a pair plans; its mate bounds over all themes and places items when asked. `peer` leads to the
 * other one; the bell (four shared bytes) wakes the planner when its mate has answered.
 */
type Paired<Kind> = {
  readonly kind: Kind;
  readonly problem: PlanProblem;
  readonly peer: MessagePort;
  readonly bell: SharedArrayBuffer;
};
export type PlanJob = Paired<"plan"> & { readonly seed: string };
export type MateJob = Paired<"mate">;

/** What a worker is told, once in its life. */
export type WorkerJob =
  | PlanJob
  | MateJob
  | { readonly kind: "conflict"; readonly problem: PlanProblem }
  | { readonly kind: "mip"; readonly mip: Mip; readonly secondsMax: number }
  | { readonly kind: "runs"; readonly problem: RunProblem; readonly secondsMax: number };

/** What a worker tells. */
export type WorkerReply =
  | { readonly kind: "ready" }
  | { readonly kind: "step"; readonly step: PlanStep }
  /** No plan is worth more, whatever its themes. */
  | { readonly kind: "bound"; readonly bound: number }
  | { readonly kind: "conflict"; readonly conflict: Conflict | undefined }
  | { readonly kind: "mip"; readonly answer: MipAnswer }
  | { readonly kind: "runs"; readonly plan: RunPlan }
  | { readonly kind: "done" }
  | { readonly kind: "failed"; readonly message: string };
