import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";
import { searchPlan } from "./search.ts";
import type { PlanState } from "./state.ts";

/** Which items each week holds (week * itemCount + item; 1: some). */
export type WeekItems = Uint8Array;

/** The program that decides only which items come in which week; its bound holds for every plan. */
export function weekModel(indexed: IndexedProblem, themes: Int32Array): PlanModel {
  return buildModel(indexed, { blocks: weekBlocks(indexed), themes, fixed: null });
}

/** The items of a week model's solution. */
export function itemsOfSolution(
  indexed: IndexedProblem,
  model: PlanModel,
  values: Float64Array,
): WeekItems {
  return markItems(indexed, model, (column) => (values[column] ?? 0) > 0.5);
}

/**
 * Items worth trying in each week: those that the relaxed week model would take at a loss of at most
 * `lossMax` points. The rest of the larder only slows a search down.
 */
export function promisingItems(
  indexed: IndexedProblem,
  model: PlanModel,
  columnDuals: Float64Array,
  lossMax: number,
): WeekItems {
  return markItems(indexed, model, (column) => (columnDuals[column] ?? 0) >= -lossMax);
}

function markItems(
  indexed: IndexedProblem,
  model: PlanModel,
  isMarked: (column: number) => boolean,
): WeekItems {
  const marked = new Uint8Array(indexed.weekCount * indexed.itemCount);
  model.scope.blocks.forEach(({ week }, block) => {
    for (let item = 0; item < indexed.itemCount; item += 1) {
      const column = model.columns[block * indexed.itemCount + item] ?? -1;
      if (column >= 0 && isMarked(column)) marked[week * indexed.itemCount + item] = 1;
    }
  });
  return marked;
}

/** Steps of each walk that puts weeks' items on their days. */
const FOLLOW_STEPS = 200_000;

/**
 * A plan that follows which items each week should hold (frequencies first, then days, as Balintfy et
 * al. 1978): a walk among those items alone, then a cool one among all promising ones mends what fits
 * on no day.
 */
export function followItems(
  state: PlanState,
  wanted: WeekItems,
  promising: WeekItems,
  seed: string,
): PlanState {
  const plan = state.copy();
  const walk = { seed, steps: FOLLOW_STEPS, keepThemes: true } as const;
  searchPlan(plan, { ...walk, promising: wanted, heat: [8, 0.2] });
  searchPlan(plan, { ...walk, promising, heat: [1, 0.1] });
  return plan;
}
