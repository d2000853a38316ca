import type { IndexedProblem } from "./indexed.ts";
import type { LinearProgram, ProgramBuilder } from "./program.ts";
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
