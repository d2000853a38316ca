import type { IndexedProblem } from "./indexed.ts";
import { addAims } from "./model-aims.ts";
import { addRules } from "./model-rules.ts";
import type { Block, ModelDraft, ModelScope, PlanModel } from "./model-draft.ts";
import { packable } from "./packing.ts";
import { ProgramBuilder } from "./program.ts";

/**
 * The plan as a mixed-integer program. With single days as blocks, its optimum is the best plan; with
 * weeks as blocks every plan satisfies it, so its optimum bounds all plans (Balintfy et al. 1978 plan
 * frequencies first in the same way).
 */
export function buildModel(indexed: IndexedProblem, scope: ModelScope): PlanModel {
  const draft = startDraft(indexed, scope);
  addItemColumns(draft);
  addRules(draft);
  addAims(draft);
  const { columns, themeColumns, tours } = draft;
  const columnWeeks = draft.builder.columnWeeks();
  return { program: draft.builder.build(), columnWeeks, scope, columns, themeColumns, tours };
}

/** Every planned day as a block of its own. */
export function dayBlocks({ weekOfDay }: IndexedProblem): Block[] {
  return [...weekOfDay.entries()].map(([day, week]) => ({ week, days: [day] }));
}

/** Every week as one block. */
export function weekBlocks({ daysOfWeek }: IndexedProblem): Block[] {
  return daysOfWeek.map((days, week) => ({ week, days }));
}

function startDraft(indexed: IndexedProblem, scope: ModelScope): ModelDraft {
  return {
    indexed,
    scope,
    builder: new ProgramBuilder(),
    columns: new Int32Array(scope.blocks.length * indexed.itemCount).fill(-1),
    themeColumns: new Int32Array(indexed.weekCount * indexed.themeCount).fill(-1),
    tours: [],
    weeks: [...indexed.daysOfWeek.keys()],
  };
}

function addItemColumns({ indexed, scope, builder, columns }: ModelDraft): void {
  const { itemCount, allowed, partOfItem, rests, restsOfItem, dayNumbers, values } = indexed;
  const isLocked = new Set(indexed.locks.map(({ day, item }) => day * itemCount + item));
  scope.blocks.forEach(({ days, week }, block) => {
    builder.week = week;
    for (let item = 0; item < itemCount; item += 1) {
      if ((partOfItem[item] ?? -1) < 0) continue;
      const open = days.filter((day) => allowed[day * itemCount + item]);
      if (open.length === 0) continue;
      const restDays = Math.max(...(restsOfItem[item] ?? []).map((at) => rests[at]?.restDays ?? 1));
      const most = packable(dayNumbers, open, restDays);
      const worth = Math.max(...open.map((day) => values[day * itemCount + item] ?? 0));
      const least = days.filter((day) => isLocked.has(day * itemCount + item)).length;
      columns[block * itemCount + item] = builder.column(worth, Math.min(least, most), most, true);
    }
  });
}
