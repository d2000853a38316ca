import { mondayOf, type Day } from "#lib/calendar/index.ts";
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

/** Lunches of any weeks, gathered as one set of records that a post can be told from. */
export async function readBoardRecords(
  db: Db,
  lunchIds: readonly string[],
  today: Day,
  settings: Settings,
): Promise<EpisodeRecords> {
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
  return {
    ...{ id: "board", number: 0, weekOf: mondayOf(today), title: "", today },
    ...{ surprise: "", revealOn: null, seriesName: "", seriesStartedOn: null },
    lunches: lunches.map((lunch) => draftLunch(lunch, goods, tricks)),
    children: children.filter((child) => !child.isRetired || judged.has(child.id)),
    ...{ reactions: goods.reactions, promises: [], lastPacked: new Map(), lunchesBefore: 0 },
    ...{ nextTitle: null, voice: voiceOf(settings) },
  };
}
