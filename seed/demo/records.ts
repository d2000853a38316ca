import type { Carrying } from "#lib/safety/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";

/**
 * The rows of a demo series. Field names follow the database's models; days are `YYYY-MM-DD`,
 * instants ISO 8601 in UTC. Families, tricks and reference themes are the catalogue's own rows and
 * are only pointed at by their ids.
 */
export type DemoChild = {
  readonly id: string;
  readonly privateName: string;
  readonly onScreenName: string;
  readonly birthMonth: string;
  readonly portionFactor: number;
  readonly facePoints: 3 | 5 | 7;
  readonly position: number;
};
export type DemoAvoidance = {
  readonly id: string;
  readonly childId: string;
  readonly allergen: string;
  readonly severity: "severe" | "allergy" | "avoid" | "dislike";
  readonly note: string;
};
/** `trait` or `allergens` say what the rule keeps out; the caller words it for its rule engine. */
export type DemoSchoolRule = {
  readonly id: string;
  readonly name: string;
  readonly keepsOut: {
    readonly traits: readonly string[];
    readonly allergens: readonly string[];
    readonly from?: Day;
    readonly to?: Day;
  };
  readonly position: number;
  readonly active: boolean;
};
export type DemoDayOff = {
  readonly id: string;
  readonly from: Day;
  readonly to: Day;
  readonly label: string;
};
export type DemoShop = {
  readonly id: string;
  readonly name: string;
  /** ISO weekdays 1–7. */
  readonly days: readonly number[];
  readonly hours: string;
  readonly distanceOrder: number;
  readonly aisles: readonly string[];
  readonly note: string;
};
export type DemoProduct = {
  readonly id: string;
  readonly foodId: string;
  readonly name: string;
  readonly flavour: string;
  readonly packGrams: number;
  readonly provenance: "bought" | "gifted";
  readonly disclosure: string;
  readonly allergens: readonly string[];
  readonly maybe: readonly string[];
};
export type DemoProductShop = {
  readonly productId: string;
  readonly shopId: string;
  readonly aisle: string;
  readonly onlyThere: boolean;
};
export type DemoPrice = {
  readonly id: string;
  readonly productId: string;
  readonly shopId: string;
  readonly cents: number;
  readonly on: Day;
};
export type DemoStock = {
  readonly id: string;
  readonly foodId: string;
  readonly productId: string | null;
  readonly grams: number;
  readonly boughtOn: Day;
  readonly openedOn: Day | null;
  readonly useBy: Day | null;
  readonly place: "pantry" | "fridge" | "freezer";
  readonly paidCents: number | null;
};
/** A staple kept at a level. */
export type DemoPar = {
  readonly foodId: string;
  readonly gramsPerDay: number;
  readonly leadDays: number;
  readonly reserveGrams: number;
};
export type DemoErrandRun = {
  readonly id: string;
  readonly shopId: string;
  readonly date: Day;
  readonly weekOf: Day;
  readonly doneAt: string | null;
  readonly byHand: boolean;
};
export type DemoErrandLine = {
  readonly id: string;
  readonly runId: string;
  readonly foodId: string | null;
  readonly productId: string | null;
  readonly label: string;
  readonly packs: number;
  readonly paidCents: number | null;
  readonly state: "open" | "bought" | "none-left" | "dropped";
  readonly byHand: boolean;
  readonly stamp: string;
};
export type DemoEpisode = {
  readonly id: string;
  readonly number: number;
  readonly weekOf: Day;
  readonly themeId: string;
  readonly workingTitle: string;
  readonly lockedAt: string | null;
  readonly publishedAt: string | null;
  readonly publishedOn: Day | null;
  readonly url: string;
  readonly surprise: string;
  readonly surpriseRevealOn: Day | null;
  readonly notes: string;
  readonly runtimeSeconds: number | null;
};
export type DemoLunch = {
  readonly id: string;
  readonly episodeId: string;
  readonly date: Day;
  readonly angle: string;
  readonly minutesUsed: number | null;
  readonly ambientC: number | null;
  readonly ambientNote: string;
  readonly hard: string;
  readonly pickups: string;
  readonly packedAt: string | null;
};
export type DemoLunchItem = {
  readonly id: string;
  readonly lunchId: string;
  readonly foodId: string;
  readonly productId: string | null;
  readonly part: string;
  readonly position: number;
  /** For a child of portion factor 1. */
  readonly amount: number;
  readonly unit: string;
  readonly fate: "planned" | "packed" | "scrapped" | "stepped-in";
  readonly reason: string;
  readonly insteadOfId: string | null;
  readonly note: string;
  readonly owedUseBy: Day | null;
  readonly settledOn: Day | null;
  readonly settledHow: "used" | "frozen" | "let-go" | null;
};
export type DemoItemTrick = { readonly itemId: string; readonly trickId: string };
/** Where one child's amount differs; 0: not for this child. */
export type DemoItemShare = {
  readonly itemId: string;
  readonly childId: string;
  readonly amount: number;
};
export type DemoReaction = {
  readonly itemId: string;
  readonly childId: string;
  readonly eaten: 0 | 1 | 2 | 3 | 4 | null;
  readonly face: number | null;
  readonly facePoints: number | null;
  readonly quote: string;
  readonly note: string;
  readonly loggedAt: string;
  readonly revision: number;
};
export type DemoPromise = {
  readonly id: string;
  readonly what: string;
  readonly episodeId: string | null;
  readonly madeOn: Day;
  readonly dueOn: Day | null;
  readonly keptOn: Day | null;
  readonly note: string;
};
export type DemoIdea = {
  readonly id: string;
  readonly text: string;
  readonly receivedOn: Day;
  readonly state: "inbox" | "theme" | "food" | "promise" | "passed";
  readonly becameId: string | null;
  readonly note: string;
};
export type DemoScreenTime = {
  readonly episodeId: string;
  readonly childId: string;
  readonly seconds: number;
};

/** Minutes that a step of a food really took, noted on a lunch's day. */
export type DemoTiming = {
  readonly id: string;
  readonly foodId: string;
  readonly step: string;
  readonly minutes: number;
  readonly on: Day;
};

/** How the demo speaks, and the words that never leave its house. */
export type DemoVoice = {
  readonly signOn: string;
  readonly signOff: string;
  readonly housePhrases: readonly string[];
  /** The school and the street: words that never leave. */
  readonly placesKept: readonly string[];
  readonly lawNote: string;
};

/** A whole demo series. */
export type DemoSeries = {
  readonly name: string;
  readonly startedOn: Day;
  readonly children: readonly DemoChild[];
  readonly avoidances: readonly DemoAvoidance[];
  readonly schoolRules: readonly DemoSchoolRule[];
  /** How lunch is carried, and the monthly mean outdoors, °C, January first. */
  readonly carrying: Carrying;
  readonly climateC: readonly number[];
  readonly voice: DemoVoice;
  readonly daysOff: readonly DemoDayOff[];
  readonly shops: readonly DemoShop[];
  /** House recipes: foods of the user's own, beside the reference foods. */
  readonly houseFoods: readonly Food[];
  /** Their ingredients as typed, by food. */
  readonly houseRecipes: Readonly<Record<string, string>>;
  readonly products: readonly DemoProduct[];
  readonly productShops: readonly DemoProductShop[];
  readonly prices: readonly DemoPrice[];
  readonly stock: readonly DemoStock[];
  readonly pars: readonly DemoPar[];
  readonly errandRuns: readonly DemoErrandRun[];
  readonly errandLines: readonly DemoErrandLine[];
  readonly episodes: readonly DemoEpisode[];
  readonly lunches: readonly DemoLunch[];
  readonly lunchItems: readonly DemoLunchItem[];
  readonly itemTricks: readonly DemoItemTrick[];
  readonly itemShares: readonly DemoItemShare[];
  readonly reactions: readonly DemoReaction[];
  readonly screenTimes: readonly DemoScreenTime[];
  readonly timings: readonly DemoTiming[];
  readonly promises: readonly DemoPromise[];
  readonly ideas: readonly DemoIdea[];
  /** The taste model behind the reactions: share of the food the child eats on average that day. */
  readonly truthFor: (childId: string, foodId: string, on?: Day) => number;
};
