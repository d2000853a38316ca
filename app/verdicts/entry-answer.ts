import type { VerdictConflict, VerdictFields } from "#lib/reactions/index.ts";

/** The verdict of one child on one item, as the server has it. */
export type Cell = {
  readonly itemId: string;
  readonly childId: string;
  readonly revision: number;
  readonly values: VerdictFields;
  readonly conflicts: readonly VerdictConflict[];
};

/** What the server says of one entry. */
export type EntryAnswer =
  | { readonly kind: "kept"; readonly cell: Cell }
  | { readonly kind: "refused"; readonly message: string };

/** Where a child's verdict on an item is found. */
export function cellKey(itemId: string, childId: string): string {
  return `${itemId} ${childId}`;
}

/** A child and an item that nothing was said of. */
export const NOTHING_SAID: VerdictFields = { eaten: null, face: null, quote: "", note: "" };
