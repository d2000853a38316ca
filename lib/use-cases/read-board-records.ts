import { day, mondayOf, type Day } from "#lib/calendar/index.ts";
import {
  readChildren,
  readEpisodesOfLunches,
  readGoods,
  readTricks,
  type Db,
  type Settings,
} from "#lib/db/index.ts";
import type { EpisodeRecords } from "#lib/drafts/index.ts";
import { draftLunch, voiceOf } from "./read-episode-records.ts";

/** What a post of the board is told from. */
export type BoardRecords = {
  readonly records: EpisodeRecords;
  /** The themes of the lunches, by lunch. */
  readonly titles: ReadonlyMap<string, string>;
  /** What the episodes of these lunches hide, or hid. */
  readonly surprises: readonly { readonly surprise: string; readonly revealOn: Day | null }[];
};

/** Lunches of any weeks, gathered as one set of records that a post can be told from. */
export async function readBoardRecords(
  db: Db,
  lunchIds: readonly string[],
  today: Day,
  settings: Settings,
): Promise<BoardRecords> {
  const [episodes, children, tricks] = await Promise.all([
    readEpisodesOfLunches(db, lunchIds),
    readChildren(db),
    readTricks(db),
  ]);
  const lunches = episodes
    .flatMap((episode) => episode.lunches)
    .filter(({ id }) => lunchIds.includes(id));
  const products = lunches.flatMap(({ items }) => items.flatMap((item) => item.productId ?? []));
  const goods = await readGoods(db, lunchIds, [...new Set(products)]);
  const judged = new Set(goods.reactions.map(({ childId }) => childId));
  const records: EpisodeRecords = {
    ...{ id: "board", number: 0, weekOf: mondayOf(today), title: "", today },
    ...{ surprise: "", revealOn: null, seriesName: "", seriesStartedOn: null },
    lunches: lunches.map((lunch) => draftLunch(lunch, goods, tricks)),
    children: children.filter((child) => !child.isRetired || judged.has(child.id)),
    ...{ reactions: goods.reactions, promises: [], lastPacked: new Map(), lunchesBefore: 0 },
    ...{ nextTitle: null, voice: voiceOf(settings) },
  };
  const chosen = episodes.filter((episode) =>
    episode.lunches.some(({ id }) => lunchIds.includes(id)),
  );
  return {
    records,
    titles: new Map(
      chosen.flatMap((episode) =>
        episode.lunches.map(({ id }) => [id, episode.theme?.name ?? episode.workingTitle] as const),
      ),
    ),
    surprises: chosen.flatMap(({ surprise, surpriseRevealOn: on }) =>
      surprise === "" ? [] : [{ surprise, revealOn: on === null ? null : day(on) }],
    ),
  };
}
