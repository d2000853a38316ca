import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";

/** Which items each week holds (week * itemCount + item; 1: some). */
export type WeekItems = Uint8Array;

/** The program that decides only which items come in which week; its bound holds for every plan. */
export function weekModel(indexed: IndexedProblem, themes: Int32Array): PlanModel {
  return buildModel(indexed, { blocks: weekBlocks(indexed), themes, fixed: null });
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
  const marked = new Uint8Array(indexed.weekCount * indexed.itemCount);
  model.scope.blocks.forEach(({ week }, block) => {
    for (let item = 0; item < indexed.itemCount; item += 1) {
      const column = model.columns[block * indexed.itemCount + item] ?? -1;
      if (column >= 0 && (columnDuals[column] ?? 0) >= -lossMax) {
        marked[week * indexed.itemCount + item] = 1;
      }
    }
  });
  return marked;
}
