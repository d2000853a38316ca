import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { withSession, type Solution, type Solver, type SolverSession } from "./solver.ts";

/** What is settled before any day is planned. */
export type Outline = {
  /** Of each week, -1: none. */
  readonly themes: Int32Array;
  /**
   * Points that one use of an item in a week costs at least against the best of the relaxed weeks
   * (week * itemCount + item); Infinity: not sold on the week's tour, or not possible.
   */
  readonly losses: Float64Array;
};

/**
 * What each item would cost (reduced costs; Dantzig, Fulkerson, Johnson 1954 fix columns by them), with
 * the shops of each week given as a position in the problem's `tours` or, without them, free. `model`:
 * the week model for the themes.
 */
export function outlineOf(
  indexed: IndexedProblem,
  model: PlanModel,
  solver: Solver,
  tours?: Int32Array,
): Outline {
  const relax = (session: SolverSession): Solution => {
    if (tours) {
      const { columns, values } = tourBounds(model, tours);
      session.setBounds(columns, values, values);
    }
    return session.solve();
  };
  const solution = withSession(solver, model.program, relax, true);
  const losses = new Float64Array(indexed.weekCount * indexed.itemCount).fill(Infinity);
  model.scope.blocks.forEach(({ week }, block) => {
    const shops = tours ? (indexed.tours[tours[week] ?? -1]?.shops ?? -1) : -1;
    for (let item = 0; item < indexed.itemCount; item += 1) {
      const column = model.columns[block * indexed.itemCount + item] ?? -1;
      if (column < 0 || !isSoldOn(indexed, item, shops)) continue;
      const loss = Math.max(0, -(solution.columnDuals[column] ?? 0));
      losses[week * indexed.itemCount + item] = solution.status === "optimal" ? loss : 0;
    }
  });
  return { themes: model.scope.themes ?? new Int32Array(0), losses };
}

/** True when an item needs no shop or one of those given as bits (-1: all). */
function isSoldOn(
  { shopSets, shopSetOfItem }: IndexedProblem,
  item: number,
  shops: number,
): boolean {
  const set = shopSets[shopSetOfItem[item] ?? 0] ?? 0;
  return set === 0 || (set & shops) !== 0;
}

/** The columns of a model's tours and the values that choose the given ones. */
function tourBounds(
  model: PlanModel,
  tours: Int32Array,
): { readonly columns: number[]; readonly values: number[] } {
  return {
    columns: model.tours.flatMap(({ columns }) => [...columns]),
    values: model.tours.flatMap(({ week, columns }) =>
      columns.map((_, tour) => (tour === tours[week] ? 1 : 0)),
    ),
  };
}
