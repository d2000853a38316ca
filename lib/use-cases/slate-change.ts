import { takeSnapshot, type Db, type SlateSnapshot } from "#lib/db/index.ts";

/** Where the slate's changes stand in the log. */
export const SLATE = "slate";

/**
 * Keeps how some episodes stand, before a change, so that it can be taken back. `label` says in a few
 * words what is about to change. Call it inside the transaction of the change.
 */
export async function keepForUndo(
  tx: Db,
  episodeIds: readonly string[],
  label: string,
): Promise<void> {
  const undoJson = JSON.stringify(await takeSnapshot(tx, episodeIds));
  await tx.change.create({ data: { scope: SLATE, label, undoJson } });
}

/** The snapshot of an episode that did not exist: going back to it removes the episode. */
export function beforeItWas(episodeId: string): SlateSnapshot {
  return {
    episodeIds: [episodeId],
    Episode: [],
    Lunch: [],
    LunchItem: [],
    ItemTrick: [],
    ItemShare: [],
    Waiver: [],
    Draft: [],
    ChapterMark: [],
    ScreenTime: [],
  };
}
