const WORD = /[\p{L}\p{N}]+(?:[’'\-‑][\p{L}\p{N}]+)*/gu;

const counts = new Map<string, number>();
/** So many sentences’ words are remembered: the same ones stand in several pieces. */
const COUNTS_MOST = 5_000;

/** Words as a voice says them: runs of letters and digits, joined by apostrophes or hyphens. */
export function countWords(text: string): number {
  const kept = counts.get(text);
  if (kept !== undefined) return kept;
  let words = 0;
  WORD.lastIndex = 0;
  while (WORD.test(text)) words += 1;
  if (counts.size >= COUNTS_MOST) counts.clear();
  counts.set(text, words);
  return words;
}

/** Seconds to say a text at a rate of words a minute (150 a minute is 2.5 a second). */
export function spokenSeconds(text: string, wordsPerMinute: number): number {
  return (countWords(text) / wordsPerMinute) * 60;
}

/** "0:00", "7:05", "1:02:03": seconds as a running time. */
export function runningTime(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds + 1e-9));
  const [hours, minutes, rest] = [
    Math.floor(whole / 3600),
    Math.floor((whole % 3600) / 60),
    String(whole % 60).padStart(2, "0"),
  ];
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, "0")}:${rest}` : `${minutes}:${rest}`;
}
