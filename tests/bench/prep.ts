import { schedule } from "#lib/prep/index.ts";
import { psplibInstances } from "#tests/support/psplib.ts";
import { benchKitchen, benchMaxLags } from "./kitchen.ts";

/**
 * Share proven, mean gap and speed on the project-scheduling benchmark beside the project, if it is
 * there; on projects with maximal lags; on kitchen mornings.
 */
export function benchPrep(): { name: string; value: number; unit: string }[] {
  const instances = psplibInstances();
  const runs = instances.map(({ problem, optimum }) => {
    const start = performance.now();
    const found = schedule(problem);
    const seconds = (performance.now() - start) / 1000;
    if (!("starts" in found)) throw new Error("A benchmark project has a schedule.");
    return { ...found, optimum, seconds };
  });
  const named = (what: string, value: number, unit: string) => ({
    name: `prep, PSPLIB j30, ${what}`,
    value,
    unit,
  });
  const seconds = runs.map((run) => run.seconds).sort((a, b) => a - b);
  const isWrong = (run: (typeof runs)[number]): boolean =>
    run.makespan < run.optimum || run.bound > run.optimum;
  return [
    named("instances here", runs.length, "of 24"),
    named("proven", runs.filter((run) => run.optimal).length, `of ${runs.length}`),
    named("wrong", runs.filter(isWrong).length, `of ${runs.length}`),
    named("mean above the optimum", mean(runs.map((r) => 100 * (r.makespan / r.optimum - 1))), "%"),
    named("mean gap to the bound", mean(runs.map((r) => 100 * (1 - r.bound / r.makespan))), "%"),
    named("median time", seconds[seconds.length >> 1] ?? 0, "s"),
    named("longest time", seconds.at(-1) ?? 0, "s"),
    ...benchMaxLags(),
    ...benchKitchen(),
  ];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
