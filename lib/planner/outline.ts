import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import type { Solution, SolverSession } from "./solver.ts";

/** What is settled before any day is planned. */
export type Outline = {
  /** Of each week, -1: none. */
  readonly themes: Int32Array;
  /** Tour of shops of each week, a position in the problem's `tours`; empty: shops do not count. */
  readonly tours: Int32Array;
  /**
   * Points that one use of an item in a week costs at least against the best of the relaxed weeks
   * (week * itemCount + item); Infinity: not sold on the week's tour, or not possible.
   */
  readonly losses: Float64Array;
};

/**
 * Settles the shops of each week and, for them, what each item would cost (reduced costs; Dantzig,
 * Fulkerson, Johnson 1954 fix columns by them). `session`: the week model for the themes, relaxed.
 */
export function outlineMonth(
  indexed: IndexedProblem,
  model: PlanModel,
  session: SolverSession,
): Outline {
  const { tours, solution } = settleTours(model, session, indexed);
  const losses = new Float64Array(indexed.weekCount * indexed.itemCount).fill(Infinity);
  model.scope.blocks.forEach(({ week }, block) => {
    const shops = indexed.tours[tours[week] ?? -1]?.shops ?? -1;
    for (let item = 0; item < indexed.itemCount; item += 1) {
      const column = model.columns[block * indexed.itemCount + item] ?? -1;
      if (column < 0 || !isSoldOn(indexed, item, shops)) continue;
      const loss = Math.max(0, -(solution.columnDuals[column] ?? 0));
      losses[week * indexed.itemCount + item] = solution.status === "optimal" ? loss : 0;
    }
  });
  return { themes: model.scope.themes ?? new Int32Array(0), tours, losses };
}

/** True when an item needs no shop or one of those given as bits. */
function isSoldOn(
  { shopSets, shopSetOfItem }: IndexedProblem,
  item: number,
  shops: number,
): boolean {
  const set = shopSets[shopSetOfItem[item] ?? 0] ?? 0;
  return set === 0 || (set & shops) !== 0;
}

type Settled = { readonly tours: Int32Array; readonly solution: Solution };

/**
 * Tours by ascent: from the largest shares of the relaxation, week after week the best among the tours
 * with a share, those with one shop more and those with one less.
 */
function settleTours(model: PlanModel, session: SolverSession, indexed: IndexedProblem): Settled {
  const relaxed = session.solve();
  const tours = new Int32Array(indexed.weekCount).fill(-1);
  if (model.tours.length === 0) return { tours, solution: relaxed };
  const shareOf = (columns: readonly number[], tour: number): number =>
    relaxed.values[columns[tour] ?? 0] ?? 0;
  for (const { week, columns } of model.tours) {
    tours[week] = [...columns.keys()].reduce((best, tour) =>
      shareOf(columns, tour) > shareOf(columns, best) ? tour : best,
    );
  }
  let solution = withTours(model, session, tours);
  let isBetter = true;
  for (let round = 0; isBetter && round < 3; round += 1) {
    isBetter = false;
    for (const { week, columns } of model.tours) {
      const own = tours[week] ?? 0;
      const shared = [...columns.keys()].filter((tour) => shareOf(columns, tour) > 0.02);
      for (const tour of new Set([...shared, ...nearTours(indexed, own)])) {
        if (tour === tours[week]) continue;
        const next = withTours(model, session, tours.with(week, tour));
        if (!(worthOf(next) > worthOf(solution) + 1e-6)) continue;
        tours[week] = tour;
        solution = next;
        isBetter = true;
      }
    }
  }
  return { tours, solution: withTours(model, session, tours) };
}

function worthOf({ status, objective }: Solution): number {
  return status === "optimal" ? objective : -Infinity;
}

/** Tours with one shop more or one less. */
function nearTours({ tours }: IndexedProblem, tour: number): number[] {
  const shops = tours[tour]?.shops ?? 0;
  return [...tours.keys()].filter((other) => {
    const change = (tours[other]?.shops ?? 0) ^ shops;
    return change !== 0 && (change & (change - 1)) === 0;
  });
}

function withTours(model: PlanModel, session: SolverSession, tours: Int32Array): Solution {
  const { columns, values } = tourBounds(model, tours);
  session.setBounds(columns, values, values);
  return session.solve();
}

/** The columns of a model's tours and the values that choose the given ones. */
export function tourBounds(
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
