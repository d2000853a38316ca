import type { Day } from "#lib/calendar/index.ts";

/** A product as it came to the kitchen. */
export type ProductRecord = {
  readonly id: string;
  readonly name: string;
  readonly provenance: "bought" | "gifted" | "sponsored" | "affiliate";
  /** The user's own words for it; empty: ours. */
  readonly disclosure: string;
};

/** One food in a lunch and what became of it. */
export type DraftItem = {
  readonly id: string;
  readonly foodId: string;
  readonly food: string;
  /** What one of it is called when counted: "pear", "slice"; null when it is not counted. */
  readonly countUnit: string | null;
  /** How many of those one child gets; null when it cannot be counted. */
  readonly count: number | null;
  readonly fate: "planned" | "packed" | "scrapped" | "stepped-in";
  readonly reason: string;
  readonly insteadOfId: string | null;
  readonly tricks: readonly {
    readonly id: string;
    readonly name: string;
    readonly kind: string;
  }[];
  readonly shop: string | null;
  readonly product: ProductRecord | null;
  readonly allergens: readonly string[];
  /** Found in some makes: “check the label”. */
  readonly maybeAllergens: readonly string[];
  /** Children it was not packed for. */
  readonly notFor: readonly string[];
};

/** What one child made of one item. */
export type DraftReaction = {
  readonly itemId: string;
  readonly childId: string;
  /** Quarters eaten, 0 to 4; null when nobody saw. */
  readonly eaten: number | null;
  /** 0 to 100 on the common axis; null when not asked. */
  readonly face: number | null;
  readonly quote: string;
};

/** One lunch of the week. */
export type DraftLunch = {
  readonly id: string;
  readonly date: Day;
  readonly angle: string;
  readonly isPacked: boolean;
  readonly minutesUsed: number | null;
  readonly items: readonly DraftItem[];
};

/** A promise made to viewers. */
export type PromiseRecord = {
  readonly id: string;
  readonly what: string;
  readonly dueOn: Day | null;
  readonly keptOn: Day | null;
};

/** A child as drafts know it; the private name is here only to be kept out. */
export type DraftChild = {
  readonly id: string;
  readonly onScreenName: string;
  readonly privateName: string;
};

/** How the series speaks. */
export type Voice = {
  readonly signOn: string;
  readonly signOff: string;
  readonly housePhrases: readonly string[];
  readonly tone: "warm" | "plain" | "playful";
  readonly emoji: boolean;
  readonly wordsPerMinute: number;
  /** The school, the street, the town: never told. */
  readonly privateWords: readonly string[];
};

/** All that a week's drafts may rest on. */
export type EpisodeRecords = {
  readonly id: string;
  readonly number: number;
  readonly weekOf: Day;
  readonly title: string;
  readonly surprise: string;
  readonly revealOn: Day | null;
  readonly today: Day;
  readonly seriesName: string;
  readonly seriesStartedOn: Day | null;
  readonly lunches: readonly DraftLunch[];
  readonly children: readonly DraftChild[];
  readonly reactions: readonly DraftReaction[];
  readonly promises: readonly PromiseRecord[];
  /** The last day before this week that each food was packed; no entry: never. */
  readonly lastPacked: ReadonlyMap<string, Day>;
  /** Lunches packed before this week. */
  readonly lunchesBefore: number;
  /** The theme of the next episode on the slate; null when there is none. */
  readonly nextTitle: string | null;
  readonly voice: Voice;
};
