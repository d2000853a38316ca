import { existsSync, readdirSync, readFileSync } from "node:fs";
import { proposePlan, type PlanProblem } from "#lib/planner/index.ts";
import { runPlanner } from "#lib/use-cases/solver/run-planner.ts";
import { endWaiting, warmUp } from "#lib/use-cases/solver/worker-pool.ts";
import { brokenRules } from "#tests/support/check-plan.ts";
import { MONTH, planInstance } from "#tests/support/plan-instance.ts";
import { median } from "./median.ts";

type Figure = { name: string; value: number; unit: string };

/** A machine that is busy elsewhere gets a run as much work done, only later. */
const SECONDS_MAX = 200;
const MARKS = [3, 10, 30] as const;

/**
 * Months of 400 items: seconds to the first plan, proven gap after some seconds for the chosen themes and
 * for all, memory, and short runs in a row. Twice: by the clock, and by the processor time of the busier
 * worker, which is what the clock would show on a machine with nothing else to do. Seeds by `BENCH_SEEDS`.
 */
export async function benchPlanner(): Promise<Figure[]> {
  const seeds = Number(process.env["BENCH_SEEDS"] ?? 10);
  const runs: Awaited<ReturnType<typeof timedRun>>[] = [];
  for (let seed = 1; seed <= seeds; seed += 1) runs.push(await timedRun(String(seed)));
  const figures = [
    named("first plan, median", median(runs.map(({ first }) => first)), "s"),
    ...MARKS.flatMap((mark) => gapFigures(runs, mark)),
    named(
      "broken rules of all last plans",
      runs.reduce((sum, run) => sum + run.broken, 0),
      "",
    ),
    named("most memory of the process", Math.max(...runs.map(({ megabytes }) => megabytes)), "MB"),
    ...historyFigures(),
    ...(await memoryFigures()),
  ];
  await endWaiting();
  return figures;
}

type Point = {
  readonly clock: number;
  readonly work: number;
  readonly gap: number | null;
  readonly gapAll: number | null;
};

function gapFigures(
  runs: readonly { readonly points: readonly Point[] }[],
  mark: number,
): Figure[] {
  return (["work", "clock"] as const).flatMap((by) => {
    const words = by === "work" ? `${mark} s of work` : `${mark} s by the clock`;
    const last = (of: "gap" | "gapAll"): number[] =>
      runs.map(({ points }) => {
        const until = points.filter((point) => point[by] <= mark);
        return 100 * (until.findLast((point) => point[of] !== null)?.[of] ?? 1);
      });
    return [
      named(`gap after ${words}, median`, median(last("gap")), "%"),
      named(`gap after ${words}, largest`, Math.max(...last("gap")), "%"),
      named(`gap to the bound over all themes after ${words}, median`, median(last("gapAll")), "%"),
    ];
  });
}

async function timedRun(seed: string) {
  const problem = planInstance({ ...MONTH, seed });
  await settle();
  const start = performance.now();
  const before = threadSeconds();
  const points: Point[] = [];
  let first = Infinity;
  let broken = 0;
  let megabytes = 0;
  const stop = new AbortController();
  const isOver = (): boolean => {
    const clock = (performance.now() - start) / 1000;
    return Math.min(busiest(before, clock), clock) > (MARKS.at(-1) ?? 0);
  };
  const watch = setInterval(() => isOver() && stop.abort(), 250);
  const options = { seed: "a", secondsMax: SECONDS_MAX, signal: stop.signal };
  for await (const { plan, gap, gapAll } of runPlanner(problem, options)) {
    const clock = (performance.now() - start) / 1000;
    first = Math.min(first, clock);
    points.push({ clock, work: busiest(before, clock), gap, gapAll });
    megabytes = Math.max(megabytes, process.memoryUsage().rss / 1e6);
    broken = brokenRules(problem, plan).length;
  }
  clearInterval(watch);
  return { first, points, broken, megabytes };
}

/** Processor time of each thread of this process in seconds; empty where the system does not tell. */
function threadSeconds(): ReadonlyMap<string, number> {
  const folder = "/proc/self/task";
  if (!existsSync(folder)) return new Map();
  const seconds = readdirSync(folder).flatMap((thread): [string, number][] => {
    try {
      const stat = readFileSync(`${folder}/${thread}/stat`, "utf8");
      // Fields 14 and 15 of proc(5), in hundredths of a second; the name before them may hold blanks.
      const [user = 0, system = 0] = stat
        .slice(stat.lastIndexOf(")") + 2)
        .split(" ")
        .slice(11, 13)
        .map(Number);
      return [[thread, (user + system) / 100]];
    } catch {
      // The thread has ended since it was listed.
      return [];
    }
  });
  return new Map(seconds);
}

/** Processor time of the busiest thread since; where the system does not tell, the clock. */
function busiest(before: ReadonlyMap<string, number>, clock: number): number {
  if (before.size === 0) return clock;
  const spent = [...threadSeconds()].map(([thread, now]) => now - (before.get(thread) ?? 0));
  return Math.max(0, ...spent);
}

/** Workers in waiting are ready before the clock starts. */
async function settle(): Promise<void> {
  warmUp();
  await new Promise((resolve) => setTimeout(resolve, 3000));
}

/** Time of the same search with one and with ten years behind, in turn. */
function historyFigures(): Figure[] {
  const [one, ten] = [52, 520].map((historyWeeks) => planInstance({ ...MONTH, historyWeeks }));
  if (!one || !ten) return [];
  const secondsOf = (problem: PlanProblem): number => {
    const start = performance.now();
    proposePlan(problem, { seed: "a" });
    return (performance.now() - start) / 1000;
  };
  const ratios = Array.from({ length: 9 }, () => secondsOf(ten) / secondsOf(one));
  return [named("first plan, ten years against one", median(ratios), "times")];
}

/** Fifty short runs in a row: memory after the last against after the fifth. */
async function memoryFigures(): Promise<Figure[]> {
  const problem = planInstance({ ...MONTH, seed: "1" });
  const after: number[] = [];
  for (let run = 0; run < 50; run += 1) {
    for await (const progress of runPlanner(problem, { seed: "a", secondsMax: 1.5 })) {
      if (progress.isDone) after.push(process.memoryUsage().rss / 1e6);
    }
  }
  const grown = median(after.slice(-5)) - median(after.slice(5, 10));
  return [named("memory grown over 50 runs", grown, "MB")];
}

function named(what: string, value: number, unit: string): Figure {
  return { name: `planner, a month of 400, ${what}`, value, unit };
}
