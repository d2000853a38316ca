import type { Day } from "#lib/calendar/index.ts";

/** One food in a lunch and what became of it. */
export interface ItemRecord {
  readonly id: string;
  readonly food: string;
  /** Only `packed` and `swapped` are ever told as packed. */
  readonly fate: "planned" | "packed" | "swapped" | "scrapped";
  /** Weeks since the food was last on; null the first time. */
  readonly weeksSince: number | null;
}

/** What one child made of one item: quarters eaten 0 to 4, and a quote in the child's own words. */
export interface ReactionRecord {
  readonly id: string;
  readonly itemId: string;
  readonly childId: string;
  readonly quarters: number;
  readonly quote: string | null;
}

/** A product shown on screen and how it came to the kitchen. */
export interface ProductRecord {
  readonly id: string;
  readonly name: string;
  readonly provenance: "bought" | "gifted" | "sponsored" | "affiliate";
}

/** One lunch of the week. */
export interface LunchRecord {
  readonly id: string;
  readonly day: Day;
  readonly items: readonly ItemRecord[];
}

/** All that a week's drafts may rest on. */
export interface EpisodeRecords {
  readonly id: string;
  readonly theme: string;
  readonly shootDay: Day;
  readonly today: Day;
  readonly lunches: readonly LunchRecord[];
  readonly children: readonly { readonly id: string; readonly onScreenName: string }[];
  readonly reactions: readonly ReactionRecord[];
  readonly products: readonly ProductRecord[];
}
