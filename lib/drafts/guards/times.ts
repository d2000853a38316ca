import {
  chapterLines,
  chapterProblems,
  chaptersIn,
  describeChapterProblem,
} from "../timing/chapters.ts";
import type { Check, Finding, Fix, GuardGround, OwnSentence } from "./check.ts";

type Lines = readonly (readonly OwnSentence[])[];

/**
 * The chapters that a description carries, in its own lines or marked in the finished episode: the
 * first at 0:00, ascending, three or more, ten seconds each. Common practice of video hosts, from memory.
 */
export function checkChapters(lines: Lines, { times }: GuardGround): Check {
  const written = chaptersIn(lines.map((line) => line.map(({ text }) => text).join(" ")));
  const marked = times?.chapters ?? [];
  const total = times?.totalSeconds ?? Infinity;
  const chapters = written.length > 0 ? written : marked;
  const isMarkedWhole = marked.length > 0 && chapterProblems(marked, total).length === 0;
  const findings = chapterProblems(chapters, total).map((problem): Finding => {
    const text = describeChapterProblem(problem, chapters);
    const line = problem.index === null ? undefined : written[problem.index]?.line;
    const place = line === undefined ? null : { line, at: 0 };
    const fixes: Fix[] = [];
    if (written.length > 0) {
      if (isMarkedWhole)
        fixes.push({
          kind: "chapters",
          label: "Write the marked chapters",
          text: chapterLines(marked),
        });
      if (problem.kind === "late-start" && place) {
        const time = /^\S+/u.exec(lines[place.line]?.[0]?.text ?? "")?.[0] ?? "";
        fixes.push({
          ...{ kind: "replace", label: "Begin it at 0:00", place },
          ...{ span: [0, time.length], text: "0:00" },
        });
      }
      fixes.push({ kind: "chapters", label: "Take the chapters out", text: "" });
    }
    return { key: `chapters: ${text}`, text, place, span: null, fixes };
  });
  return {
    ...{ kind: "chapters", level: "look", title: "Chapters that can be taken up", findings },
    passed:
      chapters.length === 0
        ? "It carries no chapters, and none are marked."
        : `${chapters.length} chapters, from 0:00, each of ten seconds or more.`,
  };
}

/** On-screen time of each child beside the share the user's own note names: a count, never a judgement. */
export function checkScreen({ times }: GuardGround): Check {
  const shares = times?.shares ?? [];
  const findings = shares.flatMap(({ name, percent, beyond }): Finding[] =>
    beyond === null
      ? []
      : [
          {
            key: `screen: ${name} ${percent.toFixed(0)}`,
            text: `${name} is on screen for ${percent.toFixed(0)} % of the running time; your note names ${beyond} %. A count, not legal advice.`,
            ...{ place: null, span: null, fixes: [] },
          },
        ],
  );
  return {
    ...{ kind: "screen", level: "look", title: "On screen within your note", findings },
    passed:
      shares.length === 0
        ? "No on-screen time is noted for this episode yet."
        : times?.namesShare
          ? "Every child stays under the share your note names. A count, not legal advice."
          : "Your note on local rules names no share to count against.",
  };
}
