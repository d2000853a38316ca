import type { DayFacts, VerdictFields } from "#lib/reactions/index.ts";

/** What every entry has; its id is made on the phone, so that it counts once however often it goes. */
export type Made = { readonly id: string; readonly madeAt: string };

/** A change of one child's verdict on one item, as it is sent. */
export type VerdictEntry = Made & {
  readonly itemId: string;
  readonly childId: string;
  readonly device: string;
  readonly baseRevision: number;
  readonly change: Partial<VerdictFields>;
};

/** A change of the facts of one day, as it is sent. */
export type FactsEntry = Made & {
  readonly lunchId: string;
  readonly device: string;
  readonly baseRevision: number;
  readonly change: Partial<DayFacts>;
};

/** A photo of one lunch, held with its file until it is sent. */
export type PhotoEntry = Made & {
  readonly lunchId: string;
  readonly keepOriginal: boolean;
  readonly file: Blob;
};

/** An entry that is not kept by the server yet. */
export type Waiting<Entry> = {
  readonly entry: Entry;
  /** Why the server will not keep it. */
  readonly problem?: string;
  /** Held by the page alone: the browser keeps nothing, so the page must stay open. */
  readonly isPassing?: boolean;
};

/** What can wait, by kind. */
export type Entries = {
  readonly verdicts: VerdictEntry;
  readonly facts: FactsEntry;
  readonly photos: PhotoEntry;
};
export type Kind = keyof Entries;

/** Everything that waits on this phone, each kind in the order it was made. */
export type AllWaiting = { readonly [Of in Kind]: readonly Waiting<Entries[Of]>[] };

/** A phone on which nothing waits. */
export const NONE_WAITING: AllWaiting = { verdicts: [], facts: [], photos: [] };
