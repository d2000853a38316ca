import type { IndexedProblem } from "./indexed.ts";
import type { LinearProgram, ProgramBuilder } from "./program.ts";

/** Days planned as one: a single day (exact), or a whole week (a relaxation, five times smaller). */
export type Block = { readonly week: number; readonly days: readonly number[] };

/** What a program decides. */
export type ModelScope = {
  /** In date order. */
  readonly blocks: readonly Block[];
  /** Theme of each week (-1: none); null: the program chooses. */
  readonly themes: Int32Array | null;
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
  /** For each week, the columns of its shop tours. */
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
  /** Numbers of the weeks. */
  readonly weeks: readonly number[];
};
