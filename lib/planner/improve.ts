import type { PlanModel } from "./model-draft.ts";
import { buildModel, dayBlocks } from "./model.ts";
import { startValues, stateOfSolution } from "./model-plan.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";
import type { PlanState } from "./state.ts";

/** How hard to try; nodes for reproducible runs, seconds for a watching user. */
export type ImproveLimits = Pick<SolveLimits, "nodesMax" | "secondsMax">;

/** Gap at which one week counts as solved. */
const WEEK_GAP = 0.0005;

/**
 * The plan with one week made better by the solver, or undefined when it finds none (large neighbourhood
 * search; Shaw 1998): the other weeks stay, and it starts from what is there. `promising`: the only items
 * to try besides those there (week * itemCount + item).
 */
export function improveWeek(
  state: PlanState,
  week: number,
  solver: Solver,
  limits: ImproveLimits,
  promising?: Uint8Array,
): PlanState | undefined {
  const blocks = dayBlocks(state.indexed, [week]);
  const model = buildModel(state.indexed, { blocks, themes: state.themes, fixed: state });
  const closed = promising === undefined ? [] : columnsWithout(state, model, week, promising);
  return solveFrom(state, model, solver, { ...limits, relativeGap: WEEK_GAP }, closed);
}

/** Columns of a week's day model for items that neither promise anything nor are there already. */
function columnsWithout(
  state: PlanState,
  model: PlanModel,
  week: number,
  promising: Uint8Array,
): number[] {
  const { itemCount, daysOfWeek, cells } = state.indexed;
  const there = new Set(
    (daysOfWeek[week] ?? []).flatMap((day) => [
      ...state.items.subarray(day * cells.length, (day + 1) * cells.length),
    ]),
  );
  return [...model.columns].filter((column, place) => {
    const item = place % itemCount;
    return column >= 0 && !promising[week * itemCount + item] && !there.has(item);
  });
}

function solveFrom(
  state: PlanState,
  model: PlanModel,
  solver: Solver,
  limits: SolveLimits,
  closed: readonly number[],
): PlanState | undefined {
  const start = state.broken === 0 ? { start: startValues(model, state) } : {};
  const zeros = closed.map(() => 0);
  const solution = withSession(solver, model.program, (session) => {
    session.setBounds(closed, zeros, zeros);
    return session.solve({ ...limits, ...start });
  });
  if (solution.status !== "optimal" && solution.status !== "feasible") return undefined;
  const next = stateOfSolution(state.indexed, model, solution.values);
  return next.worth > state.worth + 1e-6 ? next : undefined;
}
