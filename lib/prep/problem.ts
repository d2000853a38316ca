/**
 * A project-scheduling problem. Times are whole numbers of any one unit; nothing starts before 0.
 * In the literature's notation: RCPSP, or RCPSP/max where maximal lags are given
 * (Brucker et al. 1999, EJOR 112:3–41: PS | temp | Cmax).
 */
export type SchedulingProblem = {
  readonly tasks: readonly Task[];
  readonly precedences: readonly Precedence[];
  /** How much of each renewable resource there is at any moment. */
  readonly capacities: Readonly<Record<string, number>>;
};

/** One activity: runs `duration` units without a break and holds its demands from start to end. */
export type Task = {
  readonly id: string;
  readonly duration: number;
  /** Units held of each resource; a resource that is not named is not used. */
  readonly demands: Readonly<Record<string, number>>;
};

/**
 * `minLag ≤ start(after) − end(before) ≤ maxLag`: lags run **from the end of `before` to the start of
 * `after`**, so `minLag: 0` is plain "finish before start" and `maxLag: 0` with it "without a wait".
 * Both may be negative (an overlap is allowed). With `from: "start"` lags run from start to start,
 * `minLag ≤ start(after) − start(before) ≤ maxLag`, as RCPSP/max files state them: an arc of weight
 * `w` from i to j is `{ before: i, after: j, minLag: w, from: "start" }`, also where `w` is negative.
 */
export type Precedence = {
  readonly before: string;
  readonly after: string;
  readonly minLag: number;
  readonly maxLag?: number | undefined;
  readonly from?: "end" | "start" | undefined;
};

/** A schedule: every precedence and capacity kept. */
export type Schedule = {
  /** Start of each task. */
  readonly starts: Readonly<Record<string, number>>;
  /** The latest end. */
  readonly makespan: number;
  /** Proven: no schedule ends earlier than this. */
  readonly bound: number;
  /** True when `makespan` equals `bound`: proven to be the least. */
  readonly optimal: boolean;
};

/** Proven: no schedule exists, and why. */
export type NoSchedule = { readonly conflict: Conflict };

export type Conflict =
  /** The lags between these tasks, in a ring, ask for `excess` units more than there are. */
  | { readonly kind: "lags"; readonly tasks: readonly string[]; readonly excess: number }
  /** One task alone asks for more than there is. */
  | {
      readonly kind: "demand";
      readonly task: string;
      readonly resource: string;
      readonly demand: number;
      readonly capacity: number;
    }
  /** Lags and capacities together leave no schedule. */
  | { readonly kind: "search"; readonly steps: number };

/** The budget ended before a schedule was found or refuted (only with maximal lags). */
export type Undecided = { readonly undecided: true; readonly bound: number };
