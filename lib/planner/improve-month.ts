import { improveWeek, type ImproveLimits } from "./improve.ts";
import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { startValues } from "./model-plan.ts";
import { FIRST_STEPS, proposeState } from "./propose.ts";
import { chooseThemes, type RankedTheme } from "./rank-themes.ts";
import { searchPlan } from "./search.ts";
import { withSession, type Solver } from "./solver.ts";
import type { PlanState } from "./state.ts";
import {
  followItems,
  itemsOfSolution,
  promisingItems,
  weekModel,
  type WeekItems,
} from "./week-counts.ts";

/** A step on the way: a better plan, or the themes and a first bound. */
type MonthStep =
  | { readonly kind: "plan"; readonly state: PlanState }
  | {
      readonly kind: "themes";
      readonly themes: Int32Array;
      readonly bound: number;
      readonly ranked: readonly RankedTheme[];
    };

export type MonthOptions = {
  readonly seed: string;
  /** For one week's solve. */
  readonly weekLimits: ImproveLimits;
  /** For the week model here; null: whoever runs this solves it elsewhere and hands hints in. */
  readonly itemLimits: ImproveLimits | null;
  /** Rounds of weeks, each open to items of a larger loss than the last. */
  readonly lossesMax: readonly number[];
};

/** What the week model found: which items each week should hold. */
export type ItemsHint = { readonly objective: number; readonly items: WeekItems };

export const USUAL_MONTH: Omit<MonthOptions, "seed"> = {
  weekLimits: { secondsMax: 1 },
  itemLimits: null,
  lossesMax: [1.5, 4, Infinity],
};

type Steps = Generator<MonthStep, void, ItemsHint | undefined>;

/** What a run knows so far. */
type Climb = {
  readonly indexed: IndexedProblem;
  readonly solver: Solver;
  readonly options: MonthOptions;
  best: PlanState;
  hint: ItemsHint | undefined;
  /** Objective of the hint that was followed last. */
  followed: number;
};

/**
 * Plans a month ever better: first plan by search, themes by linear programs, items of each week by the
 * week model, days by search, then one week after another by the solver until none improves. Yields
 * each step; a hint from the week model may be handed in at each. Themes do not change after their step.
 */
export function* improveMonth(
  indexed: IndexedProblem,
  solver: Solver,
  options: MonthOptions,
): Steps {
  const best = proposeState(indexed, { seed: options.seed, steps: FIRST_STEPS });
  const climb: Climb = { indexed, solver, options, best, hint: undefined, followed: -Infinity };
  yield* offer(climb);
  const { themes, bound, ranked } = chooseThemes(indexed, solver);
  climb.hint = yield { kind: "themes", themes, bound, ranked };
  const model = weekModel(indexed, themes);
  const relaxed = withSession(solver, model.program, (session) => session.solve(), true);
  const promisingUpTo = (loss: number): WeekItems =>
    promisingItems(
      indexed,
      model,
      relaxed.columnDuals,
      relaxed.status === "optimal" ? loss : Infinity,
    );
  const promising = promisingUpTo(options.lossesMax[0] ?? Infinity);
  yield* dress(climb, themes, promising);
  solveItems(climb, model);
  for (const loss of options.lossesMax) yield* polish(climb, promising, promisingUpTo(loss));
}

/** Yields the best plan and takes a hint for it. */
function* offer(climb: Climb): Steps {
  climb.hint = (yield { kind: "plan", state: climb.best }) ?? climb.hint;
}

function isBetter(climb: Climb, next: PlanState | undefined): boolean {
  if (next === undefined || next.worth <= climb.best.worth + 1e-6) return false;
  climb.best = next;
  return true;
}

/** The first plan under the chosen themes, searched again among what promises well. */
function* dress(climb: Climb, themes: Int32Array, promising: WeekItems): Steps {
  const { seed } = climb.options;
  const plan = climb.best.copy();
  themes.forEach((theme, week) => plan.setTheme(week, theme));
  searchPlan(plan, { seed, steps: 200_000, keepThemes: true, promising, heat: [4, 0.25] });
  // The chosen themes win in the end: go on from them unless rules stand against it.
  if (plan.broken > climb.best.broken) return;
  const gained = plan.worth > climb.best.worth;
  climb.best = plan;
  if (gained) yield* offer(climb);
}

/** The week model solved here, where nobody else does. */
function solveItems(climb: Climb, model: PlanModel): void {
  const { indexed, solver, options, best } = climb;
  if (!options.itemLimits) return;
  const limits = { ...options.itemLimits, relativeGap: 0.002 };
  const start = best.broken === 0 ? { start: startValues(model, best) } : {};
  const { status, objective, values } = withSession(solver, model.program, (session) =>
    session.solve({ ...limits, ...start }),
  );
  if (status !== "optimal" && status !== "feasible") return;
  climb.hint = { objective, items: itemsOfSolution(indexed, model, values) };
}

/** Week after week until none improves; a fresh hint is followed first. */
function* polish(climb: Climb, promising: WeekItems, allowed: WeekItems): Steps {
  const { indexed, solver, options } = climb;
  for (let week = 0, idle = 0; idle < indexed.weekCount; week = (week + 1) % indexed.weekCount) {
    const { hint } = climb;
    if (hint && hint.objective > climb.followed + 1e-6) {
      climb.followed = hint.objective;
      const seed = `${options.seed} ${hint.objective}`;
      if (isBetter(climb, followItems(climb.best, hint.items, promising, seed)))
        yield* offer(climb);
    }
    const next = improveWeek(climb.best, week, solver, options.weekLimits, allowed);
    idle = isBetter(climb, next) ? 0 : idle + 1;
    if (idle === 0) yield* offer(climb);
  }
}
