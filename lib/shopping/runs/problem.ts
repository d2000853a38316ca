import type { Fraction } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { DayNeed, Supply } from "../allocate.ts";
import type { Lives } from "../shelf.ts";

/** A way to a shop on a day. */
export type Trip = { readonly shopId: string; readonly day: Day };

/** A trip that could be made, and what making it is worth avoiding, in cents. */
export type PossibleTrip = Trip & { readonly cents: number };

/** A product as one shop sells it. */
export type Offer = {
  readonly productId: string;
  readonly name: string;
  /** What one is called: "bag", "tub", "piece". */
  readonly packWord: string;
  readonly shopId: string;
  /** As purchased. For loose goods, the step they are sold in: one piece, 100 g. */
  readonly packGrams: Fraction;
  readonly priceCents: number;
};

/** Something to have on certain days, whichever of its offers it comes from. */
export type RunItem = {
  readonly id: string;
  readonly name: string;
  readonly needs: readonly DayNeed[];
  /** Stock on hand; what it covers is not bought. */
  readonly supplies: readonly Supply[];
  readonly offers: readonly Offer[];
  /** From the day it is bought, and from the day a pack is opened. */
  readonly lives: Lives;
  /** What a gram that is bought and not used counts, in cents; zero for what keeps. */
  readonly wasteCentsPerGram: number;
};

/** Why a line stays as it is. */
export type FixedReason = "by-hand" | "bought";

/** A line the user fixed, or one that is bought already: it stays as it is. */
export type FixedLine = Offer & {
  readonly why: FixedReason;
  readonly day: Day;
  readonly itemId: string;
  readonly packs: number;
};

/** What the user decided by hand. It sticks: a plan only ever fills in the rest. */
export type Overrides = {
  /** Trips that are made in any case; they cost nothing more. */
  readonly goTo: readonly Trip[];
  /** Trips that are not made: a shop on a day, a shop at all (day null), a day at all (shop null). */
  readonly notTo: readonly { readonly shopId: string | null; readonly day: Day | null }[];
  readonly lines: readonly FixedLine[];
  /** An item is bought only at this shop. */
  readonly onlyAt: readonly { readonly itemId: string; readonly shopId: string }[];
  /** A product a shop does not have, from this day on ("they had none"). */
  readonly noneLeft: readonly {
    readonly productId: string;
    readonly shopId: string;
    readonly from: Day;
  }[];
};

export const NO_OVERRIDES: Overrides = {
  goTo: [],
  notTo: [],
  lines: [],
  onlyAt: [],
  noneLeft: [],
};

/** What to buy where and when. Costs are in cents. */
export type RunProblem = {
  readonly trips: readonly PossibleTrip[];
  readonly items: readonly RunItem[];
  /** Days from buying to first use: 1 when lunches are packed before shops open, else 0. */
  readonly leadDays: number;
  readonly overrides: Overrides;
};

/** One line of a run. */
export type RunLine = Trip & {
  /** Made of trip, item and product: the same line keeps its id when a plan is made anew. */
  readonly id: string;
  readonly itemId: string;
  readonly name: string;
  readonly productId: string;
  readonly productName: string;
  readonly packs: number;
  readonly packWord: string;
  readonly packGrams: number;
  /** Of one pack. */
  readonly priceCents: number;
  /** Grams as purchased by the day they are used. */
  readonly uses: readonly { readonly day: Day; readonly grams: number }[];
  readonly leftGrams: number;
  /** The last day of what is left; null when no source limits it. */
  readonly leftUntil: Day | null;
  /** Set when the line, or a part of it, was fixed before the plan was made. */
  readonly fixed: FixedReason | null;
};

/** The lines of one trip. */
export type Run = Trip & { readonly lines: readonly RunLine[] };

/** A need that no possible trip can serve, and why. */
export type Unmet = {
  readonly itemId: string;
  readonly name: string;
  readonly day: Day;
  readonly grams: number;
  readonly why: "sold-nowhere" | "no-trip-before" | "would-not-keep";
};

/** A stock lot used instead of buying. */
export type StockUse = {
  readonly itemId: string;
  readonly lotId: string;
  readonly day: Day;
  readonly grams: number;
};

/** A plan of runs with its cost and how near the least possible it is known to be. */
export type RunPlan = {
  readonly runs: readonly Run[];
  readonly fromStock: readonly StockUse[];
  readonly unmet: readonly Unmet[];
  /** Money for goods, the weight of the trips, and the weight of waste, in cents. */
  readonly goodsCents: number;
  readonly tripCents: number;
  readonly wasteCents: number;
  /** Their sum, which is made least. */
  readonly cost: number;
  /** No plan costs less than this. Equal to `cost` when proven. */
  readonly bound: number;
  readonly proven: boolean;
  /** Item plans worked out, the measure of the budget. */
  readonly steps: number;
};
