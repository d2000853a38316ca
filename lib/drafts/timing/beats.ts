import type { OwnSentence } from "../guards/check.ts";
import { spokenSeconds } from "./spoken-time.ts";

/** A part of the outline: what is seen, what is heard, and how long it takes. */
export type Beat = {
  readonly title: string;
  readonly picture: string;
  /** What is said, sentence by sentence. */
  readonly sound: readonly OwnSentence[];
  /** Seconds of picture beyond what is said over it. */
  readonly holdSeconds: number;
  /** Estimated seconds: the words at the speaking rate, and the hold. */
  readonly seconds: number;
  /** Seconds from the start. */
  readonly from: number;
  /** Seconds left when it begins: the time counted back from the end. */
  readonly left: number;
};

type Untimed = {
  title: string;
  picture: string[];
  sound: OwnSentence[];
  holdSeconds: number;
};

/**
 * The beats of an outline written as "# Title", then lines "Picture: …", "Sound: …" and "Hold: seconds".
 * A line without a cue is said. Lines before the first title are a beat of their own.
 */
export function beatsOf(
  lines: readonly (readonly OwnSentence[])[],
  wordsPerMinute: number,
): Beat[] {
  const beats: Untimed[] = [];
  for (const line of lines) {
    const text = line.map((sentence) => sentence.text).join(" ");
    if (text === "") continue;
    const title = /^#+\s*(.*)$/u.exec(text)?.[1];
    if (title !== undefined || beats.length === 0) {
      beats.push({ title: title ?? "Start", picture: [], sound: [], holdSeconds: 0 });
    }
    const beat = beats.at(-1);
    if (title === undefined && beat) addLine(beat, line, text);
  }
  return timed(beats, wordsPerMinute);
}

function addLine(beat: Untimed, line: readonly OwnSentence[], text: string): void {
  const [, cue, rest = ""] = /^(Picture|Sound|Hold):\s*(.*)$/u.exec(text) ?? [];
  if (cue === "Picture") beat.picture.push(rest);
  else if (cue === "Hold")
    beat.holdSeconds += Math.min(600, Math.max(0, Number.parseFloat(rest) || 0));
  else {
    const said = line.map((sentence) => ({
      ...sentence,
      text: sentence.text.replace(/^Sound:\s*/u, ""),
    }));
    beat.sound.push(...said.filter((sentence) => sentence.text !== ""));
  }
}

function timed(beats: readonly Untimed[], wordsPerMinute: number): Beat[] {
  const seconds = beats.map(
    ({ holdSeconds, sound }) =>
      holdSeconds + sound.reduce((sum, { text }) => sum + spokenSeconds(text, wordsPerMinute), 0),
  );
  const total = seconds.reduce((sum, one) => sum + one, 0);
  let from = 0;
  return beats.map((beat, index) => {
    const own = seconds[index] ?? 0;
    const placed: Beat = {
      ...beat,
      picture: beat.picture.filter(Boolean).join(" "),
      ...{ seconds: own, from, left: total - from },
    };
    from += own;
    return placed;
  });
}
