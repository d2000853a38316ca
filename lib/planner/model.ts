import type { IndexedProblem } from "./indexed.ts";
import { addAims } from "./model-aims.ts";
import { addRules } from "./model-rules.ts";
import { packable } from "./packing.ts";
import { ProgramBuilder, type LinearProgram } from "./program.ts";
import type { PlanState } from "./state.ts";

/** Days planned as one: a single day (exact), or a whole week (a relaxation, five times smaller). */
export type Block = { readonly week: number; readonly days: readonly number[] };

/** What a program decides; everything else stays as it is. */
export type ModelScope = {
  /** In date order. */
  readonly blocks: readonly Block[];
  /** Theme of each week (-1: none); null: the program chooses. */
  readonly themes: Int32Array | null;
  /** Where the other days' items come from; null: there are no other days. */
  readonly fixed: PlanState | null;
};

export type PlanModel = {
  readonly program: LinearProgram;
  /** Week of each column; -1: of none. */
  readonly columnWeeks: Int32Array;
  readonly scope: ModelScope;
  /** Column of an item in a block (block * itemCount + item), -1: not possible. */
  readonly columns: Int32Array;
  /** Column of a theme in a week (week * themeCount + theme), -1: not possible or not free. */
  readonly themeColumns: Int32Array;
  /** For each week with free days, the columns of its shop tours. */
  readonly tours: readonly { readonly week: number; readonly columns: readonly number[] }[];
};

/** A model being written. */
export type ModelDraft = {
  readonly indexed: IndexedProblem;
  readonly scope: ModelScope;
  readonly builder: ProgramBuilder;
  readonly columns: Int32Array;
  readonly themeColumns: Int32Array;
  readonly tours: { readonly week: number; readonly columns: readonly number[] }[];
  /** 1: the item may be on that day (day * itemCount + item), fixed days' rests counted. */
  readonly isOpen: Uint8Array;
  /** Numbers of the weeks with free days. */
  readonly weeks: readonly number[];
  /** Items of the week's days that are not free, once per appearance. */
  readonly fixedItems: (week: number) => readonly number[];
};

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
