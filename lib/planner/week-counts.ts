import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";
import { tourBounds, type Outline } from "./outline.ts";
import { withSession, type SolveLimits, type Solver } from "./solver.ts";

/** How often each week holds each item (week * itemCount + item). */
export type WeekCounts = Int32Array;

/** The program that decides only which items come in which week; its bound holds for every plan. */
export function weekModel(indexed: IndexedProblem, themes: Int32Array): PlanModel {
  return buildModel(indexed, { blocks: weekBlocks(indexed), themes, fixed: null });
}

/**
 * Which items come in which week under an outline, as far as the limits reach; items that cost more than
 * `lossMax` are left out. Undefined when nothing was found.
 */
export function countItems(
  indexed: IndexedProblem,
  model: PlanModel,
  outline: Outline,
  solver: Solver,
  options: SolveLimits & { readonly lossMax: number },
): WeekCounts | undefined {
  const placeOf = (block: number, item: number): number =>
    (model.scope.blocks[block]?.week ?? 0) * indexed.itemCount + item;
  const places = [...model.columns.entries()]
    .filter(([, column]) => column >= 0)
    .map(([at, column]) => ({
      column,
      place: placeOf(Math.floor(at / indexed.itemCount), at % indexed.itemCount),
    }));
  const closed = places
    .filter(({ place }) => (outline.losses[place] ?? Infinity) > options.lossMax)
    .map(({ column }) => column)
    .filter((column) => model.program.columnLower[column] === 0);
  const zeros = closed.map(() => 0);
  const tour = tourBounds(model, outline.tours);
  const { status, values } = withSession(solver, model.program, (session) => {
    session.setBounds(closed, zeros, zeros);
    session.setBounds(tour.columns, tour.values, tour.values);
    return session.solve(options);
  });
  if (status !== "optimal" && status !== "feasible") return undefined;
  const counts = new Int32Array(indexed.weekCount * indexed.itemCount);
  for (const { column, place } of places) counts[place] = Math.round(values[column] ?? 0);
  return counts;
}
