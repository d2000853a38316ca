import type { Day } from "#lib/calendar/index.ts";
import { improveMonth, type MonthOptions } from "./improve-month.ts";
import { indexProblem } from "./index-problem.ts";
import { planOf } from "./plan-state.ts";
import type { Plan, PlanProblem } from "./problem.ts";
import type { Solver } from "./solver.ts";

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
    }
  /** No plan with the chosen themes is worth more, as known by now. */
  | { readonly kind: "bound"; readonly bound: number };

export type ThemeOffer = {
  readonly monday: Day;
  readonly themeId: string;
  readonly points: number;
};

/** As `improveMonth`, in the words of the problem. Blocks until the search ends. */
export function planMonth(
  problem: PlanProblem,
  solver: Solver,
  options: MonthOptions,
  tell: (step: PlanStep) => void,
): void {
  improveMonth(indexProblem(problem), solver, options, (step) => {
    if (step.kind === "plan") {
      const { points, broken } = step.state;
      tell({ kind: "plan", plan: planOf(step.state), points, broken });
      return;
    }
    if (step.kind === "bound") {
      tell(step);
      return;
    }
    const themeIds = [...step.themes].map((theme) => problem.themes[theme]?.id ?? null);
    const ranked = step.ranked.flatMap(({ week, theme, points }) => {
      const monday = problem.weeks[week]?.monday;
      const themeId = problem.themes[theme]?.id;
      return monday && themeId ? [{ monday, themeId, points }] : [];
    });
    tell({ kind: "themes", bound: step.bound, themeIds, ranked });
  });
}
