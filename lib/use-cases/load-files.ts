import type { Day } from "#lib/calendar/index.ts";
import {
  chapterLines,
  chapterProblems,
  chaptersOf,
  chaptersVtt,
  countText,
  describeChapterProblem,
  readingEase,
  readingGrade,
  recipe,
  runningTime,
  screenShares,
  toHtml,
  toMarkdown,
  videoObject,
  weekList,
  type Chapter,
  type ScreenShare,
} from "#lib/drafts/index.ts";
import type { Context } from "./context.ts";
import { keptCopyDeskGround, type CopyDeskGround } from "./copy-desk-ground.ts";
import { deskView, type CopyDeskView } from "./load-copy-desk.ts";
import { outlineBeats, pieceView } from "./piece-view.ts";
import { readHouseRecipes, readNeighbours } from "#lib/db/index.ts";

/** A file an episode is published with. */
type OutputFile = {
  readonly name: string;
  readonly fileName: string;
  readonly type: string;
  readonly text: string;
};

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
  readonly files: readonly OutputFile[];
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
    files: filesOf(ground, chapters, total, description, recipes),
    ...{ ease: readingEase(counts), grade: readingGrade(counts) },
  };
}

function filesOf(
  ground: CopyDeskGround,
  chapters: readonly Chapter[],
  totalSeconds: number,
  description: string,
  recipes: Awaited<ReturnType<typeof readHouseRecipes>>,
): OutputFile[] {
  const { episode, records, told } = ground;
  const name = told(0).title;
  const stem = `episode-${episode.number}`;
  const json = (value: unknown): string => JSON.stringify(value, null, 2);
  const video = videoObject({
    ...{ name, description, url: episode.url, publishedOn: episode.publishedOn },
    ...{ totalSeconds, chapters },
  });
  const packed = told(0).facts.flatMap(({ detail, label }) =>
    detail.kind === "packed" && detail.tense === "did"
      ? [{ name: detail.angle || label, description: detail.foods.join(", ") }]
      : [],
  );
  const file = (title: string, end: string, type: string, text: string): OutputFile => ({
    ...{ name: title, fileName: `${stem}${end}`, type, text },
  });
  return [
    file("Chapters for the description", "-chapters.txt", "text/plain", chapterLines(chapters)),
    file("Chapters as WebVTT", "-chapters.vtt", "text/vtt", chaptersVtt(chapters, totalSeconds)),
    file("Video with its parts", "-video.json", "application/ld+json", json(video)),
    file("The week’s lunches", "-list.json", "application/ld+json", json(weekList(name, packed))),
    ...recipes.map((one) =>
      file(
        `Recipe: ${one.name}`,
        `-recipe-${one.id}.json`,
        "application/ld+json",
        json(recipe(one, records.seriesName)),
      ),
    ),
    file("Description as Markdown", "-description.md", "text/markdown", toMarkdown(description)),
    file("Description as HTML", "-description.html", "text/html", toHtml(description)),
    file("Description as plain text", "-description.txt", "text/plain", description),
  ].filter(({ text }) => text.trim() !== "");
}
