import { indexProblem } from "./index-problem.ts";
import type { IndexedProblem } from "./indexed.ts";
import { openMonth } from "./month-days.ts";
import { outlineOf } from "./outline.ts";
import { placeItems } from "./place-items.ts";
import { planOf } from "./plan-state.ts";
import type { Plan, PlanProblem } from "./problem.ts";
import type { Solver } from "./solver.ts";
import type { PlanState } from "./state.ts";
import { weekModel, type CountedMonth } from "./week-counts.ts";

/** What another thread is asked to place: the items of each week under the chosen themes, from each seed. */
export type Placing = {
  readonly themes: Int32Array;
  readonly counted: CountedMonth;
  readonly seeds: readonly string[];
};

/** Whoever places items meanwhile, another thread as a rule. Gives one answer for each start. */
export type Mate = {
  readonly start: (placing: Placing) => void;
  /** Waits for its best placement: the item of each cell; null: it has none. */
  readonly collect: () => Int32Array | null;
};

/** Without another thread: places when the answer is asked for. */
export function mateHere(indexed: IndexedProblem, solver: Solver): Mate {
  const asked: Placing[] = [];
  return {
    start: (placing) => void asked.push(placing),
    collect: () => {
      const placing = asked.shift();
      return placing ? place(indexed, solver, placing, () => undefined) : null;
    },
  };
}

/** Places as asked; tells each better plan and returns the best one's items. Blocks. */
export function placeAsAsked(
  problem: PlanProblem,
  solver: Solver,
  placing: Placing,
  tell: (found: { readonly plan: Plan; readonly points: number; readonly broken: number }) => void,
): Int32Array | null {
  return place(indexProblem(problem), solver, placing, (state) => {
    const { points, broken } = state;
    tell({ plan: planOf(state), points, broken });
  });
}

function place(
  indexed: IndexedProblem,
  solver: Solver,
  { themes, counted, seeds }: Placing,
  tell: (state: PlanState) => void,
): Int32Array | null {
  const outline = outlineOf(indexed, weekModel(indexed, themes), solver, counted.tours);
  const month = openMonth(indexed, themes, solver);
  const found: PlanState[] = [];
  try {
    for (const seed of seeds) {
      placeItems({ indexed, outline, month, counted }, seed, (state) => {
        if (state.worth <= (found.at(-1)?.worth ?? -Infinity) + 1e-6) return;
        found.push(state);
        tell(state);
      });
    }
  } finally {
    month.session.close();
  }
  return found.at(-1)?.items ?? null;
}
