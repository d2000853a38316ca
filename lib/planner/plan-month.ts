import type { Day } from "#lib/calendar/index.ts";
import { improveMonth, type ItemsHint, type MonthOptions } from "./improve-month.ts";
import { indexProblem } from "./index-problem.ts";
import { planOf } from "./plan-state.ts";
import type { Plan, PlanProblem } from "./problem.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";
import { itemsOfSolution, weekModel } from "./week-counts.ts";

/** What a watching user gets while a month is planned. */
export type PlanStep =
  | { readonly kind: "plan"; readonly plan: Plan; readonly points: number; readonly broken: number }
  | {
      readonly kind: "themes";
      /** Of each week; null: none possible. */
      readonly themeIds: readonly (string | null)[];
      /** No plan with these themes is worth more points. */
      readonly bound: number;
      /** All possible themes of all weeks, best first. */
      readonly ranked: readonly ThemeOffer[];
    };

export type ThemeOffer = {
  readonly monday: Day;
  readonly themeId: string;
  readonly points: number;
};

/** As `improveMonth`, in the words of the problem. */
export function* planMonth(
  problem: PlanProblem,
  solver: Solver,
  options: MonthOptions,
): Generator<PlanStep, void, ItemsHint | undefined> {
  const steps = improveMonth(indexProblem(problem), solver, options);
  for (let next = steps.next(); !next.done;) {
    const step = next.value;
    const hint =
      step.kind === "plan"
        ? yield {
            kind: "plan",
            plan: planOf(step.state),
            points: step.state.points,
            broken: step.state.broken,
          }
        : yield {
            kind: "themes",
            bound: step.bound,
            themeIds: [...step.themes].map((theme) => problem.themes[theme]?.id ?? null),
            ranked: step.ranked.flatMap(({ week, theme, points }) => {
              const monday = problem.weeks[week]?.monday;
              const themeId = problem.themes[theme]?.id;
              return monday && themeId ? [{ monday, themeId, points }] : [];
            }),
          };
    next = steps.next(hint);
  }
}

/** What the week model tells while it is solved. */
export type BoundEvent =
  | { readonly kind: "bound"; readonly bound: number }
  | { readonly kind: "hint"; readonly hint: ItemsHint };

/**
 * Solves the week model for given themes: its bound holds for every plan with these themes, its
 * solutions are hints for `planMonth`. Returns the last bound; blocks until a limit or the optimum.
 */
export function boundMonth(
  problem: PlanProblem,
  themeIds: readonly (string | null)[],
  solver: Solver,
  limits: Pick<SolveLimits, "nodesMax" | "secondsMax" | "relativeGap">,
  tell: (event: BoundEvent) => void,
): number {
  const indexed = indexProblem(problem);
  const themes = Int32Array.from(themeIds, (id) =>
    id === null ? -1 : (indexed.themeIndex.get(id) ?? -1),
  );
  const model = weekModel(indexed, themes);
  const watch: SolveLimits["watch"] = (event) => {
    if (event.kind === "bound") tell(event);
    else {
      const items = itemsOfSolution(indexed, model, event.values);
      tell({ kind: "hint", hint: { objective: event.objective, items } });
    }
  };
  const { bound } = withSession(solver, model.program, (session) =>
    session.solve({ ...limits, watch }),
  );
  tell({ kind: "bound", bound });
  return bound;
}
