import type { Chapter } from "../timing/chapters.ts";

/**
 * Chapters as a WebVTT file (W3C WebVTT: text track of kind "chapters", cues that do not overlap).
 * The last one ends with the episode.
 */
export function chaptersVtt(chapters: readonly Chapter[], totalSeconds: number): string {
  const cues = chapters.map(({ seconds, title }, index) => {
    const end = chapters[index + 1]?.seconds ?? Math.max(totalSeconds, seconds + 1);
    return `${index + 1}\n${stamp(seconds)} --> ${stamp(end)}\n${escaped(title)}\n`;
  });
  return ["WEBVTT\n", ...cues].join("\n");
}

/** hh:mm:ss.mmm */
function stamp(seconds: number): string {
  const ms = Math.round(seconds * 1000);
  const two = (value: number): string => String(value).padStart(2, "0");
  const [hours, minutes, rest] = [
    Math.floor(ms / 3_600_000),
    Math.floor((ms % 3_600_000) / 60_000),
    Math.floor((ms % 60_000) / 1000),
  ];
  return `${two(hours)}:${two(minutes)}:${two(rest)}.${String(ms % 1000).padStart(3, "0")}`;
}

/** Text of a cue: the characters the format keeps for itself written as entities, and no arrow. */
function escaped(text: string): string {
  return text
    .replace(/\s+/gu, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");
}
