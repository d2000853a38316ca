import type { Day } from "#lib/calendar/index.ts";
import {
  chapterProblems,
  chaptersOf,
  countText,
  describeChapterProblem,
  readingEase,
  readingGrade,
  runningTime,
  screenShares,
  type Chapter,
  type ScreenShare,
} from "#lib/drafts/index.ts";
import type { Context } from "./context.ts";
import { keptCopyDeskGround } from "./copy-desk-ground.ts";
import { episodeFiles, type EpisodeFile } from "./episode-files.ts";
import { deskView, type CopyDeskView } from "./load-copy-desk.ts";
import { outlineBeats, pieceView } from "./piece-view.ts";
import { readHouseRecipes, readNeighbours } from "#lib/db/index.ts";

export type FilesView = CopyDeskView & {
  readonly revision: number;
  readonly runtime: string;
  /** Marked by the user, or estimated from the outline. */
  readonly isMarked: boolean;
  readonly chapters: readonly { readonly time: string; readonly title: string }[];
  readonly problems: readonly string[];
  readonly children: readonly {
    readonly id: string;
    readonly name: string;
    readonly time: string;
  }[];
  readonly shares: readonly ScreenShare[];
  readonly lawNote: string;
  readonly files: readonly EpisodeFile[];
  readonly ease: number | undefined;
  readonly grade: number | undefined;
};

/** Chapters, on-screen seconds and every file of an episode, or undefined when the week has none. */
export async function loadFiles(
  { db, today }: Context,
  monday: Day,
): Promise<FilesView | undefined> {
  const [ground, near] = await Promise.all([
    keptCopyDeskGround(db, monday, today),
    readNeighbours(db, monday),
  ]);
  if (!ground) return undefined;
  const { episode, records, settings } = ground;
  const { marks, screen, runtimeSeconds } = ground.times;
  const recipes = await readHouseRecipes(
    db,
    records.lunches.flatMap(({ items }) => items.map(({ foodId }) => foodId)),
  );
  const beats = outlineBeats(ground);
  const estimate = beats.reduce((sum, beat) => sum + beat.seconds, 0);
  const total = runtimeSeconds ?? estimate;
  const chapters: readonly Chapter[] = marks.length > 0 ? marks : chaptersOf(beats);
  const description = pieceView(ground, "description", null).body;
  const counts = countText(description);
  return {
    ...{ ...deskView(ground), ...near, revision: episode.revision, lawNote: settings.lawNote },
    runtime: runtimeSeconds ? runningTime(runtimeSeconds) : "",
    isMarked: marks.length > 0,
    chapters: chapters.map(({ seconds, title }) => ({ time: runningTime(seconds), title })),
    problems: chapterProblems(chapters, total).map((one) => describeChapterProblem(one, chapters)),
    children: records.children.map(({ id, onScreenName }) => {
      const seconds = screen.find((one) => one.childId === id)?.seconds;
      return { id, name: onScreenName, time: seconds === undefined ? "" : runningTime(seconds) };
    }),
    shares: screenShares(
      records.children.flatMap(({ id, onScreenName }) => {
        const seconds = screen.find((one) => one.childId === id)?.seconds;
        return seconds === undefined ? [] : [{ name: onScreenName, seconds }];
      }),
      total,
      settings.lawNote,
    ),
    files: episodeFiles(ground, { chapters, totalSeconds: total, recipes }),
    ...{ ease: readingEase(counts), grade: readingGrade(counts) },
  };
}
