import type {
  DayFacts,
  DayFactsConflict,
  VerdictConflict,
  VerdictFields,
} from "#lib/reactions/index.ts";

/** The verdict of one child on one item, as the server has it. */
export type Cell = {
  readonly itemId: string;
  readonly childId: string;
  readonly revision: number;
  readonly values: VerdictFields;
  readonly conflicts: readonly VerdictConflict[];
};

/** The facts of one day, as the server has them. */
export type DayState = {
  readonly lunchId: string;
  readonly revision: number;
  readonly values: DayFacts;
  readonly conflicts: readonly DayFactsConflict[];
};

/** What the server says of one entry. */
export type Answer<State> =
  | { readonly kind: "kept"; readonly state: State }
  | { readonly kind: "refused"; readonly message: string };

/** Where a child's verdict on an item is found. */
export function cellKey({
  itemId,
  childId,
}: {
  readonly itemId: string;
  readonly childId: string;
}): string {
  return `${itemId} ${childId}`;
}

/** A child and an item that nothing was said of. */
export const NOTHING_SAID: VerdictFields = { eaten: null, face: null, quote: "", note: "" };
