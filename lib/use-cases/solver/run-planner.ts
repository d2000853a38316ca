import { MessageChannel } from "node:worker_threads";
import type { Plan, PlanProblem, ThemeOffer } from "#lib/planner/index.ts";
import type { WorkerReply } from "./worker-messages.ts";
import { takeWorker, warmUp, type ReadyWorker } from "./worker-pool.ts";

/** The best plan so far, and how good it is proven to be. */
export type PlanProgress = {
  readonly plan: Plan;
  readonly points: number;
  /** Rules it still breaks; above 0 nothing better was met yet. */
  readonly broken: number;
  /** No plan with the chosen themes is worth more; null until the themes are chosen. */
  readonly bound: number | null;
  /** (bound − points) / bound; null while there is no bound, or the plan has other themes. */
  readonly gap: number | null;
  /** No plan is worth more, whatever its themes; null until it is known. */
  readonly boundAll: number | null;
  /** (boundAll − points) / boundAll; null while there is none or the plan breaks rules. */
  readonly gapAll: number | null;
  readonly themes: readonly ThemeOffer[];
  readonly isDone: boolean;
};

export type RunOptions = {
  readonly seed: string;
  readonly secondsMax: number;
  /** Stop at this proven gap. */
  readonly gap?: number;
  /** Ends the run and its workers at once. */
  readonly signal?: AbortSignal;
};

/**
 * Plans in two worker threads, a planner and its mate, and yields whenever either has news.
 * The last progress has `isDone`. Throws when a worker fails; ends quietly when aborted.
 */
export async function* runPlanner(
  problem: PlanProblem,
  options: RunOptions,
): AsyncGenerator<PlanProgress, void> {
  const workers = await Promise.all([takeWorker(), takeWorker()]);
  const news = startRun(workers, problem, options);
  try {
    for (let progress = await news.next(); progress; progress = await news.next()) {
      yield progress;
      if (progress.isDone) return;
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.end()));
    warmUp();
  }
}

type Run = {
  latest: PlanProgress | null;
  themeIds: string | null;
  isStale: boolean;
  error: Error | null;
};

function startRun(
  [planner, mate]: readonly [ReadyWorker, ReadyWorker] | readonly ReadyWorker[],
  problem: PlanProblem,
  options: RunOptions,
): { next: () => Promise<PlanProgress | null> } {
  if (!planner || !mate) throw new Error("a run takes two workers");
  const run: Run = { latest: null, themeIds: null, isStale: false, error: null };
  let wake: () => void = () => undefined;
  let isOver = false;
  const over = (): void => {
    isOver = true;
    wake();
  };
  const listen = (reply: WorkerReply): void => {
    if (reply.kind === "failed") run.error = new Error(`the planner stopped: ${reply.message}`);
    if (takeReply(run, reply)) run.isStale = true;
    if (reply.kind === "failed" || isGapReached(run, options)) isOver = true;
    wake();
  };
  planner.onReply((reply) => {
    listen(reply);
    if (reply.kind === "done") over();
  });
  mate.onReply(listen);
  const { port1, port2 } = new MessageChannel();
  const { seed, secondsMax } = options;
  const bell = new SharedArrayBuffer(4);
  planner.send({ kind: "plan", problem, seed, peer: port1, bell }, [port1]);
  mate.send({ kind: "mate", problem, peer: port2, bell }, [port2]);
  const timer = setTimeout(over, secondsMax * 1000);
  options.signal?.addEventListener("abort", over, { once: true });
  return {
    next: async () => {
      while (!run.isStale && !isOver) await new Promise<void>((resolve) => (wake = resolve));
      if (run.error) throw run.error;
      run.isStale = false;
      if (isOver) clearTimeout(timer);
      if (options.signal?.aborted || !run.latest) return null;
      return { ...run.latest, isDone: isOver };
    },
  };
}

function isGapReached({ latest }: Run, { gap }: RunOptions): boolean {
  return gap !== undefined && latest?.gap !== null && latest !== null && latest.gap <= gap;
}

/** Takes news into the latest progress; true when there is something to show. */
function takeReply(run: Run, reply: WorkerReply): boolean {
  const { latest } = run;
  if (reply.kind === "step" && reply.step.kind === "plan") {
    const { plan, points, broken } = reply.step;
    const base = latest ?? { bound: null, boundAll: null, themes: [], isDone: false };
    const next = withGaps({ ...base, plan, points, broken }, run.themeIds);
    if (latest && !isBetter(run, next, latest)) return false;
    run.latest = next;
    return true;
  }
  if (!latest) return false;
  if (reply.kind === "step" && reply.step.kind === "themes") {
    run.themeIds = reply.step.themeIds.join();
    const { bound, ranked } = reply.step;
    run.latest = withGaps({ ...latest, bound, themes: ranked }, run.themeIds);
    return true;
  }
  if (reply.kind === "bound") return takeBound(run, latest, "boundAll", reply.bound);
  if (reply.kind !== "step" || reply.step.kind !== "bound") return false;
  return takeBound(run, latest, "bound", reply.step.bound);
}

function takeBound(
  run: Run,
  latest: PlanProgress,
  of: "bound" | "boundAll",
  bound: number,
): boolean {
  if (bound >= (latest[of] ?? Infinity)) return false;
  run.latest = withGaps({ ...latest, [of]: bound }, run.themeIds);
  return true;
}

/** Fewer broken rules first, then the chosen themes, then points: two threads find plans. */
function isBetter(run: Run, next: PlanProgress, latest: PlanProgress): boolean {
  if (next.broken !== latest.broken) return next.broken < latest.broken;
  const [isNextChosen, isLatestChosen] = [next, latest].map(({ plan }) =>
    hasThemes(plan, run.themeIds),
  );
  if (isNextChosen !== isLatestChosen) return isNextChosen === true;
  return next.points > latest.points;
}

function hasThemes(plan: Plan, themeIds: string | null): boolean {
  return plan.weeks.map(({ themeId }) => themeId).join() === themeIds;
}

/**
 * The gaps of a plan without broken rules: to the bound of its own themes, and to that of all. The first
 * bound holds for the chosen themes only, the second for every plan.
 */
function withGaps(
  progress: Omit<PlanProgress, "gap" | "gapAll">,
  themeIds: string | null,
): PlanProgress {
  const { plan, points, broken, bound, boundAll } = progress;
  const hasChosen = hasThemes(plan, themeIds);
  const gapTo = (limit: number | null): number | null =>
    limit === null || broken > 0 ? null : Math.max(0, limit - points) / Math.abs(limit);
  return { ...progress, gap: hasChosen ? gapTo(bound) : null, gapAll: gapTo(boundAll) };
}
