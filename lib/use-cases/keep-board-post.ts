import { ok, refuse, type Result } from "#lib/base/index.ts";
import { day, type Day } from "#lib/calendar/index.ts";
import {
  BOARD_KIND,
  inTransaction,
  publishDraft,
  readSettings,
  writeDraft,
} from "#lib/db/index.ts";
import { correctionNote, lateChanges } from "#lib/drafts/index.ts";
import { boardPiece, readBoardPost, tellPost } from "./board-post.ts";
import type { Context } from "./context.ts";
import type { KeepPostInput, PublishPostInput } from "./keep-board-post.input.ts";
import { writtenOf, type PieceView } from "./piece-of.ts";
import { publishedOf } from "./published-pieces.ts";
import { readBoardRecords } from "./read-board-records.ts";

export type PostProblem = {
  readonly kind: "gone" | "changed-meanwhile" | "nothing-told" | "open" | "to-come";
};

/** Keeps a post of chosen lunches and says its id. Refuses when none of them tells anything. */
export function keepBoardPost(
  { db, today }: Context,
  { foodId, lunchIds }: KeepPostInput,
): Promise<Result<string, PostProblem>> {
  return inTransaction(db, async (tx) => {
    const settings = await readSettings(tx);
    const ground = await readBoardRecords(tx, lunchIds, today, settings);
    const board = { foodId, lunchIds: [...new Set(lunchIds)] };
    const { composed } = tellPost(board, ground, settings);
    if (composed.text === "") return refuse({ kind: "nothing-told" });
    const id = await writeDraft(tx, undefined, {
      ...{ episodeId: null, kind: BOARD_KIND, lunchId: null, templateVersion: 0, edited: false },
      ...{ body: composed.text, written: writtenOf(composed, { board }) },
    });
    return ok(id);
  });
}

/** Marks a post as published on a day, or takes the mark back. Refuses a day to come and an open guard. */
export function publishBoardPost(
  { db, today }: Context,
  { post: id, revision, on }: PublishPostInput,
): Promise<Result<undefined, PostProblem>> {
  return inTransaction(db, async (tx) => {
    const post = await readBoardPost(tx, id, today);
    if (!post) return refuse({ kind: "gone" });
    const { stored } = post;
    if (stored.revision !== revision) return refuse({ kind: "changed-meanwhile" });
    if (on !== null && on > today) return refuse({ kind: "to-come" });
    if (on !== null && boardPiece(post).open > 0) return refuse({ kind: "open" });
    const published = on === null ? null : publishedOf(stored);
    await publishDraft(tx, { id, written: { ...stored.written, published } }, on);
    return ok(undefined);
  });
}

export type BoardPostView = {
  readonly piece: PieceView<"board">;
  readonly publishedOn: Day | null;
  /** What the records say otherwise since it was published; empty: nothing. */
  readonly correction: string;
};

/** A kept post with its guards and records, or undefined when it is gone. */
export async function loadBoardPost(
  { db, today }: Context,
  id: string,
): Promise<BoardPostView | undefined> {
  const post = await readBoardPost(db, id, today);
  if (!post) return undefined;
  const { publishedOn, written } = post.stored;
  const late = lateChanges("post", written.published?.sentences ?? [], post.composed.lines.flat());
  return {
    piece: boardPiece(post),
    publishedOn: publishedOn === null ? null : day(publishedOn),
    correction: publishedOn === null ? "" : correctionNote(late),
  };
}

/** Words for a refusal. */
export function describePostProblem({ kind }: PostProblem): string {
  switch (kind) {
    case "gone":
      return "This post was removed meanwhile.";
    case "changed-meanwhile":
      return "This post was changed in another tab meanwhile. Open the page anew.";
    case "nothing-told":
      return "These lunches tell nothing of it any more. Choose again.";
    case "open":
      return "A guard is still open. Mend it first.";
    case "to-come":
      return "That day is still to come. Mark it once it is out.";
  }
}
