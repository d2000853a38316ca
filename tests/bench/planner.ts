import { proposePlan } from "#lib/planner/index.ts";
import { runPlanner } from "#lib/use-cases/solver/run-planner.ts";
import { endWaiting, warmUp } from "#lib/use-cases/solver/worker-pool.ts";
import { brokenRules } from "#tests/support/check-plan.ts";
import { MONTH, planInstance } from "#tests/support/plan-instance.ts";

type Figure = { name: string; value: number; unit: string };

const SECONDS_MAX = 30;
const MARKS = [3, 10, 30] as const;

/**
 * Months of 400 items: seconds to the first plan, proven gap after some seconds (for the chosen themes),
 * memory, the same with ten years behind, and short runs in a row. Seeds by `BENCH_SEEDS`.
 */
export async function benchPlanner(): Promise<Figure[]> {
  const seeds = Number(process.env["BENCH_SEEDS"] ?? 10);
  const runs: Awaited<ReturnType<typeof timedRun>>[] = [];
  for (let seed = 1; seed <= seeds; seed += 1) runs.push(await timedRun(String(seed)));
  const figures = [
    named("first plan, median", median(runs.map(({ first }) => first)), "s"),
    ...MARKS.flatMap((mark) => {
      const gaps = runs.map(({ gapAt }) => 100 * gapAt(mark));
      return [
        named(`gap after ${mark} s, median`, median(gaps), "%"),
        named(`gap after ${mark} s, largest`, Math.max(...gaps), "%"),
      ];
    }),
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

async function timedRun(seed: string) {
  const problem = planInstance({ ...MONTH, seed });
  await settle();
  const start = performance.now();
  const gaps: { readonly at: number; readonly gap: number }[] = [];
  let first = Infinity;
  let broken = 0;
  let megabytes = 0;
  for await (const progress of runPlanner(problem, { seed: "a", secondsMax: SECONDS_MAX })) {
    const at = (performance.now() - start) / 1000;
    first = Math.min(first, at);
    if (progress.gap !== null) gaps.push({ at, gap: progress.gap });
    megabytes = Math.max(megabytes, process.memoryUsage().rss / 1e6);
    if (progress.isDone) broken = brokenRules(problem, progress.plan).length;
  }
  const gapAt = (mark: number): number => gaps.findLast(({ at }) => at <= mark)?.gap ?? 1;
  return { first, gapAt, broken, megabytes };
}

/** Workers in waiting are ready before the clock starts. */
async function settle(): Promise<void> {
  warmUp();
  await new Promise((resolve) => setTimeout(resolve, 3000));
}

/** Time of the same search with one and with ten years behind. */
function historyFigures(): Figure[] {
  const secondsOf = (historyWeeks: number): number => {
    const problem = planInstance({ ...MONTH, historyWeeks });
    const times = Array.from({ length: 5 }, () => {
      const start = performance.now();
      proposePlan(problem, { seed: "a" });
      return (performance.now() - start) / 1000;
    });
    return median(times);
  };
  return [named("first plan, ten years against one", secondsOf(520) / secondsOf(52), "times")];
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

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? 0;
}
