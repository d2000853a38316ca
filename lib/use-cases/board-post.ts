import { mondayOf, type Day } from "#lib/calendar/index.ts";
import {
  readBoardDrafts,
  readSettings,
  type Db,
  type DraftRecord,
  type Settings,
} from "#lib/db/index.ts";
import { boardPost, type BoardPost, type GuardGround } from "#lib/drafts/index.ts";
import { pieceOf, type PieceView } from "./piece-of.ts";
import { readBoardRecords, type BoardRecords } from "./read-board-records.ts";

/** What a post is told of: one food in some lunches, or the lunches themselves. */
export type BoardChoice = NonNullable<DraftRecord["written"]["board"]>;

/** A post that is kept, with what its lunches tell now. */
export type KeptPost = {
  readonly stored: DraftRecord;
  readonly composed: BoardPost;
  readonly guard: GuardGround;
  readonly monday: Day;
};

/** A post of the board that is kept, or undefined when it is gone. */
export async function readBoardPost(db: Db, id: string, today: Day): Promise<KeptPost | undefined> {
  const [stored] = await readBoardDrafts(db, { id, most: 1 });
  if (!stored) return undefined;
  const settings = await readSettings(db);
  const { lunchIds } = choiceOf(stored);
  return keptPost(stored, await readBoardRecords(db, lunchIds, today, settings), settings);
}

/** A kept post from records that hold its lunches, and perhaps others. */
export function keptPost(stored: DraftRecord, ground: BoardRecords, settings: Settings): KeptPost {
  const choice = choiceOf(stored);
  const { composed, guard } = tellPost(choice, ground, settings);
  const first = ground.records.lunches.find(({ id }) => choice.lunchIds.includes(id));
  return { stored, composed, guard, monday: mondayOf(first?.date ?? ground.records.today) };
}

/** What a post says from the records, and what it is checked against. */
export function tellPost(
  { foodId, lunchIds }: BoardChoice,
  { records, titles, surprises }: BoardRecords,
  settings: Settings,
): Pick<KeptPost, "composed" | "guard"> {
  const lunches = records.lunches.filter(({ id }) => lunchIds.includes(id));
  const subject =
    foodId === null ? { kind: "lunches" as const } : { kind: "food" as const, foodId };
  const composed = boardPost({ ...records, lunches }, subject, titles);
  const items = lunches.flatMap((lunch) => lunch.items);
  const hidden = surprises.filter(({ revealOn }) => revealOn === null || revealOn > records.today);
  return {
    composed,
    guard: {
      ...{ kind: "lunch-post", today: records.today, facts: composed.facts, owed: composed.owed },
      ...{ children: records.children, privateWords: settings.privateWords },
      ...{ surprise: "", revealOn: null, hidden },
      foods: [...new Set(items.map(({ food }) => food))],
      ...{ scrapped: [], limits: settings, times: null },
    },
  };
}

/** A kept post as it stands. */
export function boardPiece({ stored, composed, guard, monday }: KeptPost): PieceView<"board"> {
  return pieceOf({
    ...{ kind: "board", name: "Board post", lunchId: null, date: null, stored, guard },
    composed: { ok: true, value: composed },
    source: { facts: composed.facts, monday },
    ...{ wordsPerMinute: 150, newerTemplate: null },
  });
}

function choiceOf({ written }: DraftRecord): BoardChoice {
  return written.board ?? { foodId: null, lunchIds: [] };
}
