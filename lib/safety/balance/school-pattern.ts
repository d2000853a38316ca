import type { BalanceScheme } from "./scheme.ts";
import type { Component } from "./credit-item.ts";
import type { VegetableSubgroup } from "./crediting-kind.ts";

export type SchoolGrade = Extract<BalanceScheme, `school-${string}`>;

/** Least amounts of a day and of a week of five days: cups, and ounce equivalents of grain and meat. */
export type SchoolPattern = {
  readonly day: Readonly<Record<Component, number>>;
  readonly week: Readonly<Record<Component, number>>;
  readonly subgroups: Readonly<Record<VegetableSubgroup, number>>;
};

/**
 * 7 CFR 210.10(c) as printed by the California Department of Education; the red and orange figure of
 * grades 9–12 from a state worksheet. Weekly most amounts of grain and meat are a planning guide and
 * left out; energy, fat and sodium are not ours to judge.
 */
export const SCHOOL_PATTERNS: Readonly<Record<SchoolGrade, SchoolPattern>> = {
  "school-k5": {
    day: { fruit: 1 / 2, vegetable: 3 / 4, grain: 1, meat: 1, milk: 1 },
    week: { fruit: 5 / 2, vegetable: 15 / 4, grain: 8, meat: 8, milk: 5 },
    subgroups: {
      "dark-green": 1 / 2,
      "red-orange": 3 / 4,
      beans: 1 / 2,
      starchy: 1 / 2,
      other: 1 / 2,
    },
  },
  "school-6-8": {
    day: { fruit: 1 / 2, vegetable: 3 / 4, grain: 1, meat: 1, milk: 1 },
    week: { fruit: 5 / 2, vegetable: 15 / 4, grain: 8, meat: 9, milk: 5 },
    subgroups: {
      "dark-green": 1 / 2,
      "red-orange": 3 / 4,
      beans: 1 / 2,
      starchy: 1 / 2,
      other: 1 / 2,
    },
  },
  "school-9-12": {
    day: { fruit: 1, vegetable: 1, grain: 2, meat: 2, milk: 1 },
    week: { fruit: 5, vegetable: 5, grain: 10, meat: 10, milk: 5 },
    subgroups: {
      "dark-green": 1 / 2,
      "red-orange": 5 / 4,
      beans: 1 / 2,
      starchy: 1 / 2,
      other: 3 / 4,
    },
  },
};

/** True for the schemes that are a grade of the school pattern. */
export function isSchoolGrade(scheme: BalanceScheme): scheme is SchoolGrade {
  return scheme in SCHOOL_PATTERNS;
}
