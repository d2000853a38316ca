import type { Day } from "#lib/calendar/index.ts";
import type { Db, DraftRecord } from "#lib/db/index.ts";
import type { compose, DraftKind } from "#lib/drafts/index.ts";
import { boardPiece, readBoardPost } from "./board-post.ts";
import { readCopyDeskGround } from "./copy-desk-ground.ts";
import type { PieceView } from "./piece-of.ts";
import { composePiece, pieceView, storedPiece, templateVersion } from "./piece-view.ts";
import type { PieceInput } from "./save-draft.input.ts";

/** A piece opened to be worked on: what is kept of it, how it is written, and how it stands. */
export type Desk = {
  readonly stored: DraftRecord | undefined;
  readonly columns: Pick<DraftRecord, "kind" | "lunchId"> & { readonly episodeId: string | null };
  /** The latest version of its template; 0 is ours. */
  readonly latest: number;
  /** The opener it is written with while nothing is kept. */
  readonly salt: number;
  readonly compose: (
    stored?: Pick<DraftRecord, "templateVersion" | "written">,
  ) => ReturnType<typeof compose>;
  readonly view: () => PieceView<DraftKind | "board">;
};

/** Opens a piece of an episode or a post of the board; undefined when it is gone. */
export async function openDesk(db: Db, input: PieceInput, today: Day): Promise<Desk | undefined> {
  if (input.kind === "board") {
    const post = await readBoardPost(db, input.post, today);
    return (
      post && {
        stored: post.stored,
        columns: { episodeId: null, kind: post.stored.kind, lunchId: null },
        ...{ latest: 0, salt: 0 },
        compose: () => ({ ok: true, value: post.composed }),
        view: () => boardPiece(post),
      }
    );
  }
  const { kind, lunchId, monday } = input;
  const ground = await readCopyDeskGround(db, monday, today);
  return (
    ground && {
      stored: storedPiece(ground, kind, lunchId),
      columns: { episodeId: ground.episode.id, kind, lunchId },
      ...{ latest: templateVersion(ground, kind), salt: ground.salt },
      compose: (stored) => composePiece(ground, kind, lunchId, stored),
      view: () => pieceView(ground, kind, lunchId),
    }
  );
}
