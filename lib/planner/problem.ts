import type { Day } from "#lib/calendar/index.ts";
import type { Part } from "#lib/catalog/index.ts";
import type { Weights } from "./weights.ts";

/**
 * The question put to the planner, as plain data: a use case builds it from the records. History is
 * already boiled down to what still matters (appearances near the planned days), so that the size of
 * the problem does not depend on the age of the series.
 */
export type PlanProblem = {
  /** In date order. */
  readonly weeks: readonly PlanWeek[];
  readonly themes: readonly PlanTheme[];
  /** What a lunch has places for; a part not listed is never planned. */
  readonly parts: readonly PlanPart[];
  readonly items: readonly PlanItem[];
  readonly children: readonly PlanChild[];
  readonly shops: readonly PlanShop[];
  readonly rests: readonly RestGroup[];
  readonly quotas: readonly Quota[];
  readonly forbidden: readonly Forbidden[];
  readonly themesApart: readonly ThemesApart[];
  readonly owed: readonly Owed[];
  readonly locks: readonly Lock[];
  readonly wishes: readonly Wish[];
  readonly newFoods: NewFoodLimits;
  readonly weights: Weights;
};

export type PlanWeek = {
  readonly monday: Day;
  /** Shoot days in date order, at least one; days off are simply not there. */
  readonly days: readonly PlanDay[];
  /** Money for the week in cents; null: no limit. */
  readonly budgetCents: number | null;
  /** A theme that stays; null: the planner chooses. */
  readonly lockedThemeId: string | null;
};

export type PlanDay = {
  readonly date: Day;
  /** Hands-on minutes there are in the morning; null: no limit. */
  readonly minutesMax: number | null;
};

export type PlanTheme = {
  readonly id: string;
  readonly name: string;
  /** Days before it may return, counted from Monday to Monday. */
  readonly restDays: number;
  /** Mondays of weeks with this theme outside the plan, earlier or later, that may still matter. */
  readonly shownOn: readonly Day[];
  /** What it is likely to add to its week's echo with the closest earlier week, 0–1. */
  readonly echo: number;
  /** Mondays of planned weeks in which it must not be, and why: out of season, banned. */
  readonly notIn: readonly { readonly monday: Day; readonly why: string }[];
  /** Points for choosing it in a week: a feast, a moment of the series, a wish. */
  readonly bonus: readonly {
    readonly monday: Day;
    readonly points: number;
    readonly why: string;
  }[];
};

/** How many items of a part a lunch holds. */
export type PlanPart = { readonly part: Part; readonly min: number; readonly max: number };

export type PlanChild = { readonly id: string; readonly name: string };

/** What is chosen: a food in one presentation as one part of a lunch. */
export type PlanItem = {
  readonly id: string;
  /** In words, as the user reads it: "cucumber stars". */
  readonly name: string;
  readonly foodId: string;
  readonly familyId: string;
  readonly trickIds: readonly string[];
  readonly part: Part;
  /** For each child in the order of `children`: expected share eaten, 0–1, and its standard deviation. */
  readonly acceptance: readonly { readonly mean: number; readonly sd: number }[];
  /** No child has tasted the food yet. */
  readonly isNew: boolean;
  /** Money for all children's portions, in cents. */
  readonly costCents: number;
  /** Hands-on minutes in the morning for the family batch. */
  readonly minutes: number;
  /** Where it can be bought; empty when it is on hand or needs no shop. */
  readonly shopIds: readonly string[];
  /** Money likely to spoil in the opened pack, in cents. */
  readonly wasteCents: number;
  readonly colours: readonly string[];
  /** Fit to themes, 0–1; themes not listed fit 0. */
  readonly fits: readonly { readonly themeId: string; readonly fit: number }[];
  /** Days since viewers last saw the food, at the first planned day; null: never. */
  readonly daysUnseen: number | null;
  /** What it is likely to add to its week's echo with the closest earlier week, 0–1. */
  readonly echo: number;
  /** On hand and ready within minutes: may stand in on a rushed morning. */
  readonly isOnHand: boolean;
};

export type PlanShop = {
  readonly id: string;
  readonly name: string;
  /** Trouble of one visit relative to a usual one (1). */
  readonly effort: number;
};

/** Items of which one appearance keeps all out for a while: same product, food, family or trick. */
export type RestGroup = {
  readonly id: string;
  readonly level: "product" | "food" | "family" | "trick";
  readonly name: string;
  /** Two appearances are at least this many days apart; 1: not twice in a lunch. */
  readonly restDays: number;
  readonly itemIds: readonly string[];
  /** Days outside the plan, earlier or later, on which it was or will be on. */
  readonly shownOn: readonly Day[];
};

/** How many of some items a lunch or a week may or must hold: balance, an appliance, a child's comfort. */
export type Quota = {
  readonly id: string;
  /** In words, ending a sentence "broken: …". */
  readonly name: string;
  readonly scope: "lunch" | "week";
  readonly itemIds: readonly string[];
  readonly min: number;
  readonly max: number | null;
  /** The only days or Mondays it is about; null: all. */
  readonly on: readonly Day[] | null;
};

export const FORBIDDING_KINDS = [
  "allergen",
  "avoidance",
  "resting",
  "school",
  "temperature",
  "choking",
  "season",
  "unavailable",
  "ban",
] as const;
export type ForbiddingKind = (typeof FORBIDDING_KINDS)[number];

/** Items that must not be on some days, for one named reason. */
export type Forbidden = {
  readonly id: string;
  readonly kind: ForbiddingKind;
  /** In words: "Pepper avoids sesame". */
  readonly name: string;
  readonly itemIds: readonly string[];
  /** Days it holds on; null: all. */
  readonly on: readonly Day[] | null;
};

/** Two themes too alike to be close: their Mondays are at least this many days apart. */
export type ThemesApart = {
  readonly themeIds: readonly [string, string];
  readonly days: number;
  readonly why: string;
};

/** Bought or promised and not used yet: one of the items, on or before the date, settles it. */
export type Owed = {
  readonly id: string;
  readonly name: string;
  readonly itemIds: readonly string[];
  readonly useBy: Day | null;
  /** How pressing, 1 usual. */
  readonly urgency: number;
};

/** An item the user has fixed. */
export type Lock = { readonly date: Day; readonly itemId: string };

/** Items the user would like to see; null: on any day. */
export type Wish = {
  readonly itemIds: readonly string[];
  readonly date: Day | null;
  readonly points: number;
};

export type NewFoodLimits = {
  readonly perLunchMax: number;
  readonly perWeekMax: number;
  /** 1 where the series wants discoveries. */
  readonly perWeekMin: number;
};

/** A proposal: themes and lunches, nothing written anywhere. */
export type Plan = {
  readonly weeks: readonly PlannedWeek[];
};
export type PlannedWeek = {
  readonly monday: Day;
  readonly themeId: string | null;
  readonly lunches: readonly PlannedLunch[];
};
export type PlannedLunch = {
  readonly date: Day;
  /** In the order of the problem's parts. */
  readonly itemIds: readonly string[];
};
