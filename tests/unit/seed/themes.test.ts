import { describe, expect, test } from "vitest";
import { day, FEAST_OFFSETS, overlapsSeason } from "#lib/calendar/index.ts";
import { referenceMotifs, referenceThemes } from "#seed/index.ts";

const themes = referenceThemes();

describe("the theme ideas", () => {
  test("are sixty or more, each with its own id and name", () => {
    expect(themes.length).toBeGreaterThanOrEqual(60);
    expect(new Set(themes.map(({ id }) => id)).size).toBe(themes.length);
    expect(new Set(themes.map(({ name }) => name)).size).toBe(themes.length);
  });

  test("hold the demo's own weeks", () => {
    const names = themes.map(({ name }) => name);
    const demo = ["Tide Pool", "Night Train", "Paper Kites", "Beekeeper's Yard", "Moon Base"];
    expect(names).toEqual(
      expect.arrayContaining([...demo, "Letters and Stamps", "First Frost", "Dinosaur Dig"]),
    );
  });

  test("name only motifs that a food or a trick carries", () => {
    const motifs = new Set(referenceMotifs());
    expect(themes.flatMap((theme) => theme.motifs.filter((word) => !motifs.has(word)))).toEqual([]);
  });

  test("differ from one another in motifs", () => {
    const keys = themes.map(({ motifs }) => [...motifs].sort().join());
    expect(new Set(keys).size).toBe(themes.length);
  });

  test("use months, fixed dates and every moving feast", () => {
    const feasts = themes.flatMap(({ season }) => (season.kind === "feast" ? [season.feast] : []));
    expect([...new Set(feasts)].sort()).toEqual(Object.keys(FEAST_OFFSETS).sort());
    expect(themes.filter(({ season }) => season.kind === "date").length).toBeGreaterThanOrEqual(8);
  });

  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])(
    "fill month %i of 2027 with five seasonal weeks at least",
    (month) => {
      const first = day(`2027-${String(month).padStart(2, "0")}-01`);
      const last = day(`2027-${String(month).padStart(2, "0")}-28`);
      const seasonal = themes.filter(
        ({ season }) => season.kind !== "always" && overlapsSeason(season, first, last),
      );
      expect(seasonal.length).toBeGreaterThanOrEqual(5);
    },
  );
});
