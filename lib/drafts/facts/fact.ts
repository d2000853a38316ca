import type { Day } from "#lib/calendar/index.ts";
import type { Noun } from "../words/index.ts";

/** Whether something is told as done or as still to come. */
export type Tense = "did" | "will";

/** A child's name and what became of the foods in its tin, by quarters eaten. */
export type VerdictDetail = {
  readonly kind: "verdict";
  readonly name: string;
  readonly all: readonly Noun[];
  readonly most: readonly Noun[];
  readonly half: readonly Noun[];
  readonly little: readonly Noun[];
  readonly none: readonly Noun[];
  /** Every food in the tin has a verdict. */
  readonly isWhole: boolean;
};

/** What a fact tells, by kind. */
export type Detail =
  | { readonly kind: "disclosure"; readonly text: string; readonly spoken: string }
  | { readonly kind: "theme"; readonly title: string; readonly lunches: number; tense: Tense }
  | {
      readonly kind: "packed";
      readonly tense: Tense;
      readonly date: Day;
      readonly angle: string;
      readonly tins: number;
      /** Each with its presentation. */
      readonly foods: readonly string[];
    }
  | {
      readonly kind: "swap";
      readonly date: Day;
      readonly out: Noun;
      readonly stepsIn: Noun | null;
      readonly reason: string;
    }
  | { readonly kind: "minutes"; readonly date: Day; readonly minutes: number }
  | VerdictDetail
  | { readonly kind: "quote"; readonly name: string; readonly about: Noun; readonly words: string }
  | { readonly kind: "first"; readonly food: Noun; readonly tense: Tense }
  | { readonly kind: "return"; readonly food: Noun; readonly weeks: number; readonly tense: Tense }
  | { readonly kind: "tally"; readonly empty: number; readonly tins: number }
  | { readonly kind: "finished"; readonly foods: readonly Noun[]; readonly children: number }
  | { readonly kind: "untouched"; readonly foods: readonly Noun[] }
  | { readonly kind: "found"; readonly food: Noun; readonly shop: string }
  | {
      readonly kind: "allergens";
      readonly names: readonly string[];
      /** Found in some makes. */
      readonly maybe: readonly string[];
    }
  | {
      readonly kind: "milestone";
      readonly count: number;
      /** The day of the lunch that was the hundredth; null: years of the series. */
      readonly date: Day | null;
    }
  | { readonly kind: "promise"; readonly what: string; readonly keptNow: boolean }
  | { readonly kind: "next"; readonly title: string };

export type FactKind = Detail["kind"];

/** A record a fact rests on. */
export type Ref = {
  readonly table:
    "Episode" | "Lunch" | "LunchItem" | "Reaction" | "Product" | "Food" | "ViewerPromise" | "Child";
  readonly id: string;
};

/** One thing that may be told, with the records it rests on. */
export type Fact = {
  /** The same for the same thing, however its records change. */
  readonly id: string;
  readonly kind: FactKind;
  readonly detail: Detail;
  readonly refs: readonly Ref[];
  /** What it is, for a person: "Pepper’s verdict on Thu 5 March". */
  readonly label: string;
  /** What the records say, row by row. */
  readonly rows: readonly (readonly [name: string, value: string])[];
  /** The day its records belong to; null for those of the week. */
  readonly on: Day | null;
};

/** What a sentence rests on, as the line beneath it shows. */
export const RESTS_ON: Readonly<Record<FactKind, "packed" | "verdict" | "goods" | "prep">> = {
  disclosure: "goods",
  theme: "packed",
  packed: "packed",
  swap: "packed",
  minutes: "prep",
  verdict: "verdict",
  quote: "verdict",
  first: "packed",
  return: "packed",
  tally: "verdict",
  finished: "verdict",
  untouched: "verdict",
  found: "goods",
  allergens: "goods",
  milestone: "packed",
  promise: "packed",
  next: "packed",
};
