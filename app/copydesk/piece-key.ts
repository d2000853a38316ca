import type { Day } from "#lib/calendar/index.ts";
import type { PieceView } from "#lib/use-cases/piece-of.ts";

/** What an action must know to find a piece: one of an episode, or a post of the board. */
export type PieceKey =
  | {
      readonly kind: PieceView["kind"];
      readonly monday: Day;
      readonly lunchId: string | null;
      readonly revision: number;
    }
  | { readonly kind: "board"; readonly post: string; readonly revision: number };

/** The key of a piece of the episode of a week. */
export function pieceKey(monday: Day, piece: PieceView): PieceKey {
  return { monday, kind: piece.kind, lunchId: piece.lunchId, revision: piece.revision };
}

/** The address of a piece. */
export function pieceHref(monday: Day, piece: Pick<PieceView, "kind" | "date">): string {
  const day = piece.date === null ? "" : `?day=${piece.date}`;
  return `/copydesk/${monday}/${piece.kind}${day}`;
}
