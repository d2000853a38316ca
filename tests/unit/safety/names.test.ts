import { expect, test } from "vitest";
import { givesAway, holdsPhrase } from "#lib/safety/index.ts";

test.each([
  ["Ines", "Ines"],
  ["INÉS", "ines"],
  ["Captain Ines", "Ines"],
  ["Inesita", "Ines"],
  ["Ines", "Ines Maria"],
  ["Al the Great", "Al"],
  ["🦊", "🦊"],
])("%s on screen gives %s away", (onScreen, hidden) => {
  expect(givesAway(onScreen, hidden)).toBe(true);
});

test.each([
  ["Biscuit", "Ines"],
  ["Pal", "Al"],
  ["Pepper", "Tomas"],
  ["🦊", "🐻"],
])("%s on screen keeps %s hidden", (onScreen, hidden) => {
  expect(givesAway(onScreen, hidden)).toBe(false);
});

test("a phrase is held as whole words only", () => {
  expect(holdsPhrase("Saint Brac’s School, Quay Lane", "quay lane")).toBe(true);
  expect(holdsPhrase("Parker", "park")).toBe(false);
  expect(holdsPhrase("anything", "…")).toBe(false);
});
