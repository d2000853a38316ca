import { type Db } from "#lib/db/index.ts";
import {
  screenShares,
  shareNamed,
  type Chapter,
  type EpisodeRecords,
  type GuardGround,
} from "#lib/drafts/index.ts";

/** What the user marked in the finished episode. */
export type EpisodeTimes = {
  readonly runtimeSeconds: number | null;
  /** Ascending. */
  readonly marks: readonly Chapter[];
  readonly screen: readonly { readonly childId: string; readonly seconds: number }[];
};

/** The marked times of an episode; all empty while nothing is marked. */
export async function readTimes(db: Db, episodeId: string): Promise<EpisodeTimes> {
  const found = await db.episode.findUnique({
    where: { id: episodeId },
    select: {
      runtimeSeconds: true,
      marks: { orderBy: { seconds: "asc" }, select: { seconds: true, title: true } },
      screenTimes: { select: { childId: true, seconds: true } },
    },
  });
  return {
    ...{ runtimeSeconds: found?.runtimeSeconds ?? null, marks: found?.marks ?? [] },
    screen: found?.screenTimes ?? [],
  };
}

/** The times that a guard looks at. `estimate` is asked for only where nobody marked how long it runs. */
export function guardedTimes(
  { runtimeSeconds, marks, screen }: EpisodeTimes,
  {
    records,
    lawNote,
    estimate,
  }: {
    readonly records: EpisodeRecords;
    readonly lawNote: string;
    readonly estimate: () => number;
  },
): NonNullable<GuardGround["times"]> {
  const isMarked = marks.length > 0 || screen.length > 0;
  const totalSeconds = runtimeSeconds ?? (isMarked ? estimate() : null);
  const seen = records.children.flatMap(({ id, onScreenName }) => {
    const seconds = screen.find((one) => one.childId === id)?.seconds;
    return seconds === undefined ? [] : [{ name: onScreenName, seconds }];
  });
  return {
    ...{ chapters: marks, totalSeconds, namesShare: shareNamed(lawNote) !== null },
    shares: totalSeconds === null ? [] : screenShares(seen, totalSeconds, lawNote),
  };
}
