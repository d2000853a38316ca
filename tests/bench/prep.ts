import { schedule } from "#lib/prep/index.ts";
import { brokenRules } from "#tests/support/check-schedule.ts";
import { J30_CELLS, j30Project } from "#tests/support/project-sets.ts";
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
    ...benchOwnJ30(),
    ...benchMaxLags(),
    ...benchKitchen(),
  ];
}

/** As many own projects of each of the 48 cells; the published set has ten of each. */
const PER_CELL = 5;
const SECONDS_MAX = 2;

/** Projects made as the published set was: how many are proven in time, and none by a broken schedule. */
function benchOwnJ30(): { name: string; value: number; unit: string }[] {
  const runs = J30_CELLS.flatMap((cell) =>
    Array.from({ length: PER_CELL }, (_, seed) => {
      const problem = j30Project(cell, seed);
      const start = performance.now();
      const found = schedule(problem);
      const seconds = (performance.now() - start) / 1000;
      if (!("starts" in found)) throw new Error("A project without greatest lags has a schedule.");
      const broken = brokenRules(problem, found.starts, found.makespan);
      return { ...found, seconds, isBroken: broken.length > 0 };
    }),
  );
  const seconds = runs.map((run) => run.seconds).sort((one, other) => one - other);
  const share = (of: (run: (typeof runs)[number]) => boolean): number =>
    (100 * runs.filter(of).length) / runs.length;
  const named = (what: string, value: number, unit: string) => ({
    name: `prep, ${runs.length} own projects like j30, ${what}`,
    value,
    unit,
  });
  return [
    named(
      "proven",
      share(({ optimal }) => optimal),
      "%",
    ),
    named(
      "proven within 2 s",
      share((run) => run.optimal && run.seconds <= SECONDS_MAX),
      "%",
    ),
    named(
      "a rule broken",
      share(({ isBroken }) => isBroken),
      "%",
    ),
    named("mean gap to the bound", mean(runs.map((r) => 100 * (1 - r.bound / r.makespan))), "%"),
    named("median time", seconds[seconds.length >> 1] ?? 0, "s"),
    named("95th percentile of time", seconds[Math.floor(0.95 * seconds.length)] ?? 0, "s"),
  ];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}
