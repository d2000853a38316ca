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

/** Every planned day as a block of its own, or those of some weeks. */
export function dayBlocks(indexed: IndexedProblem, weeks?: readonly number[]): Block[] {
  return [...indexed.weekOfDay.entries()]
    .filter(([, week]) => weeks === undefined || weeks.includes(week))
    .map(([day, week]) => ({ week, days: [day] }));
}

/** Every week as one block, or some weeks. */
export function weekBlocks(indexed: IndexedProblem, weeks?: readonly number[]): Block[] {
  return indexed.daysOfWeek
    .map((days, week) => ({ week, days }))
    .filter(({ week }) => weeks === undefined || weeks.includes(week));
}

function startDraft(indexed: IndexedProblem, scope: ModelScope): ModelDraft {
  const free = new Set(scope.blocks.flatMap(({ days }) => days));
  const itemsOn = (day: number): number[] => {
    const width = indexed.cells.length;
    const items = scope.fixed?.items.subarray(day * width, (day + 1) * width) ?? [];
    return [...items].filter((item) => item >= 0);
  };
  const fixedDays = scope.fixed
    ? [...indexed.weekOfDay.keys()].filter((day) => !free.has(day))
    : [];
  return {
    indexed,
    scope,
    builder: new ProgramBuilder(),
    columns: new Int32Array(scope.blocks.length * indexed.itemCount).fill(-1),
    themeColumns: new Int32Array(indexed.weekCount * indexed.themeCount).fill(-1),
    tours: [],
    isOpen: openPlaces(indexed, fixedDays, itemsOn),
    weeks: [...new Set(scope.blocks.map(({ week }) => week))],
    fixedItems: (week) =>
      fixedDays.filter((day) => indexed.weekOfDay[day] === week).flatMap((day) => itemsOn(day)),
  };
}

/** What may be on when, once the fixed days' items keep their kin away. */
function openPlaces(
  indexed: IndexedProblem,
  fixedDays: readonly number[],
  itemsOn: (day: number) => readonly number[],
): Uint8Array {
  const isOpen = indexed.allowed.slice();
  for (const day of fixedDays) {
    for (const position of itemsOn(day).flatMap((item) => indexed.restsOfItem[item] ?? [])) {
      const rest = indexed.rests[position];
      if (!rest) continue;
      for (let near = rest.first[day] ?? day; near <= (rest.last[day] ?? day); near += 1) {
        for (const kin of rest.items) isOpen[near * indexed.itemCount + kin] = 0;
      }
    }
  }
  return isOpen;
}

function addItemColumns({ indexed, scope, builder, columns, isOpen }: ModelDraft): void {
  const { itemCount, partOfItem, rests, restsOfItem, dayNumbers, values } = indexed;
  const isLocked = new Set(indexed.locks.map(({ day, item }) => day * itemCount + item));
  scope.blocks.forEach(({ days, week }, block) => {
    builder.week = week;
    for (let item = 0; item < itemCount; item += 1) {
      if ((partOfItem[item] ?? -1) < 0) continue;
      const open = days.filter((day) => isOpen[day * itemCount + item]);
      if (open.length === 0) continue;
      const restDays = Math.max(...(restsOfItem[item] ?? []).map((at) => rests[at]?.restDays ?? 1));
      const most = packable(dayNumbers, open, restDays);
      const worth = Math.max(...open.map((day) => values[day * itemCount + item] ?? 0));
      const least = days.filter((day) => isLocked.has(day * itemCount + item)).length;
      columns[block * itemCount + item] = builder.column(worth, Math.min(least, most), most, true);
    }
  });
}
