import { runningTime } from "./spoken-time.ts";

/** A chapter of the finished episode. */
export type Chapter = { readonly seconds: number; readonly title: string };

/** Shortest chapter, in seconds, and fewest of them. Common practice of video hosts, from memory. */
const SHORTEST = 10;
const FEWEST = 3;

export type ChapterProblem = {
  readonly kind: "late-start" | "not-ascending" | "too-few" | "too-short" | "untitled";
  /** The chapter it is about, from 0; null: all of them. */
  readonly index: number | null;
};

/** Chapters from the estimated beats: a part too short to stand alone joins its neighbour, whose title is kept. */
export function chaptersOf(
  beats: readonly { readonly title: string; readonly from: number; readonly seconds: number }[],
): Chapter[] {
  const chapters: { seconds: number; title: string; length: number }[] = [];
  for (const beat of beats) {
    const last = chapters.at(-1);
    if (last && (beat.seconds < SHORTEST || last.length < SHORTEST)) {
      if (beat.seconds > last.length) last.title = beat.title;
      last.length += beat.seconds;
    } else
      chapters.push({ seconds: Math.round(beat.from), title: beat.title, length: beat.seconds });
  }
  return chapters.map(({ seconds, title }) => ({ seconds, title }));
}

/** What keeps a list of chapters from being taken up: the first at 0:00, ascending, three or more, ten seconds each. */
export function chapterProblems(
  chapters: readonly Chapter[],
  totalSeconds: number,
): ChapterProblem[] {
  if (chapters.length === 0) return [];
  const problems: ChapterProblem[] = [];
  if (chapters.length < FEWEST) problems.push({ kind: "too-few", index: null });
  if (Math.floor(chapters[0]?.seconds ?? 0) !== 0) problems.push({ kind: "late-start", index: 0 });
  chapters.forEach(({ seconds, title }, index) => {
    const next = chapters[index + 1]?.seconds ?? totalSeconds;
    if (title.trim() === "") problems.push({ kind: "untitled", index });
    if (next <= seconds) problems.push({ kind: "not-ascending", index });
    else if (next - seconds < SHORTEST) problems.push({ kind: "too-short", index });
  });
  return problems;
}

/** A problem in words, with what to do. */
export function describeChapterProblem(
  { kind, index }: ChapterProblem,
  chapters: readonly Chapter[],
): string {
  const title = index === null ? "" : (chapters[index]?.title ?? "");
  switch (kind) {
    case "late-start":
      return `The first chapter, “${title}”, must begin at 0:00.`;
    case "not-ascending":
      return `What follows “${title}” must begin later than it does.`;
    case "too-few":
      return `There must be ${FEWEST} chapters or more.`;
    case "too-short":
      return `“${title}” is shorter than ${SHORTEST} seconds: give it more, or leave it out.`;
    case "untitled":
      return `The chapter at ${runningTime(chapters[index ?? 0]?.seconds ?? 0)} has no title.`;
  }
}

/** "0:00 Opener": the lines of a description. */
export function chapterLines(chapters: readonly Chapter[]): string {
  const isLong = chapters.some(({ seconds }) => seconds >= 3600);
  return chapters
    .map(
      ({ seconds, title }) =>
        `${isLong && seconds < 3600 ? "0:" : ""}${padded(seconds, isLong)} ${title}`,
    )
    .join("\n");
}

const CHAPTER_LINE = /^((?:\d{1,2}:)?\d{1,3}:\d{2})\s+(\S.*)$/u;

/**
 * The chapters that stand in the lines of a text, each with its line from 0. One line that begins with a
 * time is a sentence about a morning; two, or one at 0:00, are chapters.
 */
export function chaptersIn(lines: readonly string[]): (Chapter & { readonly line: number })[] {
  const found = lines.flatMap((text, line) => {
    const [, time = "", title = ""] = CHAPTER_LINE.exec(text.trim()) ?? [];
    const seconds = time === "" ? undefined : readRunningTime(time);
    return seconds === undefined ? [] : [{ line, seconds, title }];
  });
  return found.length > 1 || found[0]?.seconds === 0 ? found : [];
}

function padded(seconds: number, isLong: boolean): string {
  return isLong && seconds < 3600 ? runningTime(seconds).padStart(5, "0") : runningTime(seconds);
}

/** Seconds of a running time as typed: "75", "1:15", "1:02:03"; undefined when it is none. */
export function readRunningTime(text: string): number | undefined {
  const parts = /^(?:(\d{1,2}):)?(?:(\d{1,3}):)?(\d{1,5})$/u.exec(text.trim());
  if (!parts) return undefined;
  const [first, second, last] = [parts[1], parts[2], parts[3]];
  const minutes = second ?? first;
  const hours = second === undefined ? undefined : first;
  if (minutes !== undefined && Number(last) > 59) return undefined;
  if (hours !== undefined && Number(minutes) > 59) return undefined;
  return Number(hours ?? 0) * 3600 + Number(minutes ?? 0) * 60 + Number(last);
}
