import fc from "fast-check";
import { planKitchen } from "#lib/kitchen/index.ts";
import { schedule } from "#lib/prep/index.ts";
import { brokenRules } from "#tests/support/check-schedule.ts";
import { kitchenCases, USUAL } from "#tests/support/kitchen-mornings.ts";
import { maxLagProjects } from "#tests/support/max-lag-projects.ts";

type Figure = { readonly name: string; readonly value: number; readonly unit: string };

/** Kitchen mornings of 5 to 25 steps, one or two cooks: how many are proven, and how long it takes. */
export function benchKitchen(): Figure[] {
  const cases = fc
    .sample(kitchenCases(USUAL, ["morning", "evening"]), { numRuns: 200, seed: 11 })
    .filter(({ steps }) => steps.length >= 5)
    .slice(0, 100);
  const runs = cases.map(({ steps, kitchen }) => timed(() => planKitchen(steps, kitchen)));
  const isProven = ({ value: { getUp, handsOn } }: (typeof runs)[number]): boolean =>
    getUp.isProven && handsOn.isProven;
  return [
    count(
      "kitchen, latest start and hands-on work proven",
      runs.filter(isProven).length,
      runs.length,
    ),
    ...times("kitchen, a night and a morning", runs),
  ];
}

/** Projects with maximal lags: how many are decided, none wrongly. */
export function benchMaxLags(): Figure[] {
  return [10, 20].flatMap((activities) => {
    const problems = maxLagProjects(90, activities, "max lags");
    const runs = problems.map((problem) => timed(() => schedule(problem)));
    const kinds = runs.map(({ value }, index) => {
      if ("conflict" in value) return "refuted";
      if (!("starts" in value)) return "open";
      const problem = problems[index];
      const broken = problem ? brokenRules(problem, value.starts, value.makespan) : [];
      return broken.length > 0 ? "wrong" : value.optimal ? "proven" : "open";
    });
    const of = (kind: string): number => kinds.filter((one) => one === kind).length;
    const name = `prep, own projects with maximal lags, ${activities} activities`;
    return [
      count(`${name}, proven`, of("proven"), runs.length),
      count(`${name}, refuted`, of("refuted"), runs.length),
      count(`${name}, a rule broken`, of("wrong"), runs.length),
      ...times(name, runs),
    ];
  });
}

function timed<Value>(work: () => Value): { readonly value: Value; readonly ms: number } {
  const start = performance.now();
  const value = work();
  return { value, ms: performance.now() - start };
}

function count(name: string, value: number, all: number): Figure {
  return { name, value, unit: `of ${all}` };
}

function times(name: string, runs: readonly { readonly ms: number }[]): Figure[] {
  const sorted = runs.map(({ ms }) => ms).sort((a, b) => a - b);
  return [
    { name: `${name}, median time`, value: sorted[sorted.length >> 1] ?? 0, unit: "ms" },
    { name: `${name}, longest time`, value: sorted.at(-1) ?? 0, unit: "ms" },
  ];
}
