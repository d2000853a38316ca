import { day, type Day } from "#lib/calendar/index.ts";
import { keepUntilWritten, readBoardLunches, readSettings, type Db } from "#lib/db/index.ts";
import {
  boardPost,
  checksOf,
  openFindings,
  ownLines,
  textOfLines,
  type BoardSubject,
  type Check,
} from "#lib/drafts/index.ts";
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
};

/** Lunches are chosen for the user until the user chooses: so many of the latest. */
const CHOSEN_FIRST = 5;

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
  const chosen = found.lunches.filter(({ id }, index) => isChosen(id, index));
  const records = await readBoardRecords(
    db,
    chosen.map(({ id }) => id),
    today,
    settings,
  );
  const subject: BoardSubject =
    foodId === undefined ? { kind: "lunches" } : { kind: "food", foodId };
  const titles = new Map(chosen.map(({ id, title }) => [id, title]));
  const { lines, owed } = boardPost(records, subject, titles);
  const items = records.lunches.flatMap((lunch) => lunch.items);
  const own = ownLines(textOfLines(lines), lines);
  const checks = checksOf(own, {
    ...{ kind: "lunch-post", today, facts: [], owed, children: records.children },
    ...{ privateWords: settings.privateWords, surprise: "", revealOn: null },
    ...{
      foods: [...new Set(items.map(({ food }) => food))],
      scrapped: [],
      limits: settings,
      times: null,
    },
  });
  return {
    ...{ foods: found.foods, themes: found.themes, checks },
    lunches: found.lunches.map(({ id, date, title, foods }, index) => ({
      ...{ id, title, foods, date: day(date), isChosen: isChosen(id, index) },
    })),
    text: textOfLines(lines),
    open: openFindings(checks, new Set()),
  };
}
