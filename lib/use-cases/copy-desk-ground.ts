import { weeksLater, type Day } from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  readDrafts,
  readOpeners,
  readSettings,
  readTemplates,
  type Db,
  type DraftRecord,
  type EpisodeRecord,
  type Settings,
  type TemplateRecord,
} from "#lib/db/index.ts";
import { openerTurn, tellingOf, type EpisodeRecords, type Told } from "#lib/drafts/index.ts";
import { readTimes, type EpisodeTimes } from "./episode-times.ts";
import { readEpisodeRecords } from "./read-episode-records.ts";

/** How far back an opener is compared with the earlier ones. */
const ECHO_WEEKS = 5;

/** Everything the pieces of one episode are made from and checked against. */
export type CopyDeskGround = {
  readonly episode: EpisodeRecord;
  readonly records: EpisodeRecords;
  readonly drafts: readonly DraftRecord[];
  readonly templates: readonly TemplateRecord[];
  readonly settings: Settings;
  readonly times: EpisodeTimes;
  /** The same records told with an opener of one's choice. */
  readonly told: (salt: number) => Told;
  /** The opener that echoes none of last month’s. */
  readonly salt: number;
};

/** Reads it for the week of a Monday, or undefined when that week has no episode. */
export async function readCopyDeskGround(
  db: Db,
  monday: Day,
  today: Day,
): Promise<CopyDeskGround | undefined> {
  const found = await readEpisodeRecords(db, monday, today);
  if (!found) return undefined;
  const [drafts, templates, settings, times, openers] = await Promise.all([
    readDrafts(db, found.episode.id),
    readTemplates(db),
    readSettings(db),
    readTimes(db, found.episode.id),
    readOpeners(db, weeksLater(monday, -ECHO_WEEKS), monday),
  ]);
  const tellings = new Map<number, Told>();
  const told = (salt: number): Told => {
    const [first] = tellings.values();
    const made =
      tellings.get(salt) ?? (first ? { ...first, salt } : tellingOf(found.records, salt));
    tellings.set(salt, made);
    return made;
  };
  const salt = openers.length === 0 ? 0 : openerTurn(told(0), openers);
  return { ...found, drafts, templates, settings, times, told, salt };
}

/** The same for pages, which only read: kept until anything is written. */
export function keptCopyDeskGround(
  db: Db,
  monday: Day,
  today: Day,
): Promise<CopyDeskGround | undefined> {
  return keepUntilWritten(db, `copy desk ${monday} ${today}`, () =>
    readCopyDeskGround(db, monday, today),
  );
}
