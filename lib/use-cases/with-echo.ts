import type { PlanProblem } from "#lib/planner/index.ts";
import { likelyEchoOf, type ShownWeek } from "#lib/repeats/index.ts";

/** The problem with what each item and theme is likely to echo of the weeks shown before the last planned one. */
export function withEcho(
  problem: PlanProblem,
  shown: readonly ShownWeek[],
  motifsOfTheme: ReadonlyMap<string, readonly string[]>,
): PlanProblem {
  const planned = new Set(problem.weeks.map(({ monday }) => monday));
  const last = problem.weeks.at(-1)?.monday;
  const earlier = shown.filter(
    ({ week }) => last !== undefined && week < last && !planned.has(week),
  );
  const likely = likelyEchoOf(earlier);
  return {
    ...problem,
    items: problem.items.map((item) => ({ ...item, echo: likely.ofItem(item) })),
    themes: problem.themes.map((theme) => ({
      ...theme,
      echo: likely.ofTheme(theme.id, motifsOfTheme.get(theme.id) ?? []),
    })),
  };
}
