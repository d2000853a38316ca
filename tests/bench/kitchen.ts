import fc from "fast-check";
import { planKitchen } from "#lib/kitchen/index.ts";
import { schedule, type SchedulingProblem } from "#lib/prep/index.ts";
import { brokenRules } from "#tests/support/check-schedule.ts";
import { kitchenCases, USUAL } from "#tests/support/kitchen-mornings.ts";
import { maxLagProjects } from "#tests/support/max-lag-projects.ts";
import { leastByPairs } from "#tests/support/pair-search.ts";

/** Where the second search gives up. */
const SECOND_SEARCH_NODES = 100_000;

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
  return [
    [10, 240],
    [20, 90],
  ].flatMap(([activities = 10, size = 240]) => {
    const problems = maxLagProjects(size, activities, "max lags");
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
      count(`${name}, decided`, of("proven") + of("refuted"), runs.length),
      count(`${name}, proven`, of("proven"), runs.length),
      count(`${name}, refuted`, of("refuted"), runs.length),
      count(`${name}, a rule broken`, of("wrong"), runs.length),
      ...(activities === 10 ? confirmedBy(name, problems, runs) : []),
      ...times(name, runs),
    ];
  });
}

/** How many answers a second, unlike search confirms, and how many it contradicts. */
function confirmedBy(
  name: string,
  problems: readonly SchedulingProblem[],
  runs: readonly { readonly value: ReturnType<typeof schedule> }[],
): Figure[] {
  const verdicts = problems.map((problem, index) => {
    const least = leastByPairs(problem, SECOND_SEARCH_NODES);
    const found = runs[index]?.value;
    if (least === "gave up" || !found) return "open";
    const own = "starts" in found && found.optimal ? found.makespan : undefined;
    return own === least ? "same" : "other";
  });
  const of = (verdict: string): number => verdicts.filter((one) => one === verdict).length;
  return [
    count(`${name}, confirmed by a second search`, of("same"), problems.length),
    count(`${name}, contradicted by it`, of("other"), problems.length),
  ];
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
