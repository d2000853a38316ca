import { expect, test } from "vitest";
import { countWords, runningTime, spokenSeconds } from "#lib/drafts/index.ts";

const words = (count: number): string => Array.from({ length: count }, () => "word").join(" ");

// Broadcasters count three words a second, 180 a minute; audiobooks are read at 150 to 160 a minute
// (both common practice, from memory). The arithmetic itself is words ÷ rate × 60.
test.each([
  [180, 180, 60],
  [3, 180, 1],
  [150, 150, 60],
  [300, 150, 120],
  [155, 155, 60],
  [90, 120, 45],
  [0, 150, 0],
])("%i words at %i a minute take %d seconds", (count, rate, seconds) => {
  expect(spokenSeconds(words(count), rate)).toBeCloseTo(seconds, 9);
});

test.each([
  ["the lighthouse keeper’s half-full tin", 5],
  ["", 0],
  ["— … !", 0],
  ["½ cup, 3 clementines", 4],
])("“%s” is said in %i words", (text, count) => {
  expect(countWords(text)).toBe(count);
});

// ISO 8601-1 §5.3 gives hours, minutes and seconds; video timestamps drop the leading zero (common practice).
test.each([
  [0, "0:00"],
  [59.9, "0:59"],
  [60, "1:00"],
  [3599, "59:59"],
  [3600, "1:00:00"],
  [3723, "1:02:03"],
])("%d seconds are written %s", (seconds, text) => {
  expect(runningTime(seconds)).toBe(text);
});
