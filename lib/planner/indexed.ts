import type { PlanProblem } from "./problem.ts";

/** A place for one item in every lunch: the n-th of its part. */
export type Cell = { readonly part: number; readonly isRequired: boolean };

/** Items of which two appearances are `restDays` apart. `first`/`last`: planned days within that reach. */
export type IndexedRest = {
  readonly restDays: number;
  readonly items: readonly number[];
  readonly first: Int32Array;
  readonly last: Int32Array;
};

/** Units are lunches (day numbers of the plan) or weeks. */
export type IndexedQuota = {
  readonly isWeekly: boolean;
  readonly units: readonly number[];
  /** 1 for the units it is about. */
  readonly isOn: Uint8Array;
  readonly items: readonly number[];
  readonly min: number;
  readonly max: number;
};

/** Items of one food or in one trick, and the points of each further appearance in the plan. */
export type IndexedReturn = { readonly items: readonly number[]; readonly points: number };

export type IndexedOwed = {
  readonly items: readonly number[];
  /** Last planned day that still counts; -1 when all are too late. */
  readonly lastDay: number;
  readonly points: number;
};

/**
 * The problem with numbers for names, so that search and model need no look-ups. Two-way tables are
 * flat: `allowed[day * itemCount + item]`, `themeAllowed[week * themeCount + theme]`.
 */
export type IndexedProblem = {
  readonly problem: PlanProblem;
  readonly dayCount: number;
  readonly weekCount: number;
  readonly itemCount: number;
  readonly themeCount: number;
  /** Days since 1970-01-01 of each planned day. */
  readonly dayNumbers: Int32Array;
  readonly weekOfDay: Int32Array;
  readonly daysOfWeek: readonly (readonly number[])[];
  readonly mondayNumbers: Int32Array;
  /** Infinity: no limit. */
  readonly minutesMax: Float64Array;
  readonly budgets: Float64Array;
  readonly cells: readonly Cell[];
  readonly cellsOfPart: readonly (readonly number[])[];
  readonly partOfItem: Int32Array;
  readonly itemsOfPart: readonly (readonly number[])[];
  /** 1 where neither a forbidding rule nor a rest outside the plan stands against it. */
  readonly allowed: Uint8Array;
  /** Points of an item on a day that depend on nothing else. */
  readonly values: Float64Array;
  /** Fit of an item to a theme, 0–1: `fits[theme * itemCount + item]`. */
  readonly fits: Float64Array;
  readonly themeAllowed: Uint8Array;
  readonly themeValues: Float64Array;
  /** Fewest days between the Mondays of two themes: `themeGaps[theme * themeCount + other]`. */
  readonly themeGaps: Int32Array;
  readonly rests: readonly IndexedRest[];
  readonly restsOfItem: readonly (readonly number[])[];
  readonly quotas: readonly IndexedQuota[];
  readonly quotasOfItem: readonly (readonly number[])[];
  readonly minutes: Float64Array;
  readonly costs: Float64Array;
  readonly isNew: Uint8Array;
  readonly returns: readonly IndexedReturn[];
  readonly returnsOfItem: readonly (readonly number[])[];
  readonly familyOfItem: Int32Array;
  readonly familyCount: number;
  readonly coloursOfItem: readonly (readonly number[])[];
  readonly colourCount: number;
  /** Distinct sets of shops, as bits; set 0 is the empty one (no shop needed). */
  readonly shopSets: Int32Array;
  readonly shopSetOfItem: Int32Array;
  /** Points (≤ 0) of visiting each shop in a week. */
  readonly shopPoints: Float64Array;
  /** All combinations of shops, dearest points last: bits and points. */
  readonly tours: readonly { readonly shops: number; readonly points: number }[];
  readonly owed: readonly IndexedOwed[];
  readonly owedOfItem: readonly (readonly number[])[];
  readonly locks: readonly { readonly day: number; readonly item: number }[];
  /** Locked theme of each week, -1: free. */
  readonly lockedThemes: Int32Array;
  readonly itemIndex: ReadonlyMap<string, number>;
  readonly themeIndex: ReadonlyMap<string, number>;
  readonly dayIndex: ReadonlyMap<string, number>;
};
