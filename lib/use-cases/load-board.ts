import { day, type Day } from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  readBoardDrafts,
  readBoardLunches,
  readSettings,
  type Db,
  type Settings,
} from "#lib/db/index.ts";
import { checksOf, openFindings, ownLines, type Check } from "#lib/drafts/index.ts";
import { boardPiece, keptPost, tellPost, type BoardChoice } from "./board-post.ts";
import type { Context } from "./context.ts";
import { readBoardRecords } from "./read-board-records.ts";

/** What a post is asked for. */
export type BoardAsk = {
  readonly foodId: string | undefined;
  readonly themeId: string | undefined;
  readonly from: Day | undefined;
  readonly to: Day | undefined;
  /** Lunches chosen by the user; none: the latest five. */
  readonly chosen: readonly string[];
};

export type BoardView = {
  readonly foods: readonly { readonly id: string; readonly name: string }[];
  readonly themes: readonly { readonly id: string; readonly name: string }[];
  readonly lunches: readonly {
    readonly id: string;
    readonly date: Day;
    readonly title: string;
    readonly foods: readonly string[];
    readonly isChosen: boolean;
  }[];
  readonly text: string;
  readonly checks: readonly Check[];
  readonly open: number;
  /** What the post is told of, as it would be kept. */
  readonly choice: BoardChoice;
  /** Posts that are kept, latest first. */
  readonly posts: readonly {
    readonly id: string;
    readonly title: string;
    /** Guards that hold its copy back; a stale text counts as one. */
    readonly open: number;
    readonly isStale: boolean;
    readonly publishedOn: Day | null;
  }[];
};

/** Lunches are chosen for the user until the user chooses: so many of the latest. */
const CHOSEN_FIRST = 5;
/** So many kept posts are listed. */
const POSTS_SHOWN = 20;

/** Packed lunches that fit what is asked, latest first, and the post of the chosen ones. */
export function loadBoard({ db, today }: Context, ask: BoardAsk): Promise<BoardView> {
  return keepUntilWritten(db, `board ${today} ${JSON.stringify(ask)}`, () =>
    readBoard(db, today, ask),
  );
}

async function readBoard(db: Db, today: Day, ask: BoardAsk): Promise<BoardView> {
  const { foodId, themeId, from, to } = ask;
  const [found, settings] = await Promise.all([
    readBoardLunches(db, { foodId, themeId, from, to: to ?? today }),
    readSettings(db),
  ]);
  const isChosen = (id: string, index: number): boolean =>
    ask.chosen.length > 0 ? ask.chosen.includes(id) : index < CHOSEN_FIRST;
  const chosen = found.lunches.filter(({ id }, index) => isChosen(id, index)).map(({ id }) => id);
  const choice = { foodId: foodId ?? null, lunchIds: chosen };
  const [records, posts] = await Promise.all([
    readBoardRecords(db, chosen, today, settings),
    readPosts(db, today, settings),
  ]);
  const { composed, guard } = tellPost(choice, records, settings);
  const checks = checksOf(ownLines(composed.text, composed.lines), guard);
  return {
    ...{ foods: found.foods, themes: found.themes, checks, posts, choice },
    lunches: found.lunches.map(({ id, date, title, foods }, index) => ({
      ...{ id, title, foods, date: day(date), isChosen: isChosen(id, index) },
    })),
    text: composed.text,
    open: openFindings(checks, new Set()),
  };
}

/** The latest posts that are kept, each looked through with what its lunches tell now. */
async function readPosts(db: Db, today: Day, settings: Settings): Promise<BoardView["posts"]> {
  const drafts = await readBoardDrafts(db, { most: POSTS_SHOWN });
  if (drafts.length === 0) return [];
  const lunchIds = drafts.flatMap(({ written }) => written.board?.lunchIds ?? []);
  const ground = await readBoardRecords(db, [...new Set(lunchIds)], today, settings);
  return drafts.map((stored) => {
    const { body, open, stale } = boardPiece(keptPost(stored, ground, settings));
    return {
      ...{ id: stored.id, title: body.split("\n")[0] ?? "", open, isStale: stale !== null },
      publishedOn: stored.publishedOn === null ? null : day(stored.publishedOn),
    };
  });
}
