import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, weeksLater } from "#lib/calendar/index.ts";
import { likelyEchoOf } from "#lib/repeats/index.ts";
import { weekOf } from "./weeks.ts";

const item = (foodId: string, trickIds: readonly string[] = []) => ({
  ...{ foodId, familyId: foodId, trickIds },
});

describe("what a choice is likely to echo", () => {
  test("is the part in each earlier week, worked by hand", () => {
    const earlier = [weekOf("2026-03-02", ["fig", "kale"]), weekOf("2026-03-09", ["fig", "corn"])];
    const { ofItem } = likelyEchoOf(earlier);
    // Fig tells ln(1 + 2/2) = ln 2, kale and corn ln(1 + 2/1) = ln 3; each week ln 2 + ln 3 = ln 6, and a
    // usual one too. Foods and families count 0.5 + 0.15. Fig is the same part of both weeks.
    const fig = (0.65 * Math.log(2)) / (2 * Math.log(6));
    expect(ofItem(item("fig"))).toBeCloseTo(fig, 9);
    // Kale is in one of two: ln((e^150k + 1) / 2) / 150, where the 1 hardly counts.
    const kale = (0.65 * Math.log(3)) / (2 * Math.log(6));
    expect(ofItem(item("kale"))).toBeCloseTo(kale - Math.log(2) / 150, 9);
    expect(ofItem(item("plum"))).toBe(0);
  });

  test("of a theme is its exact part: a fifth for the same, less for shared motifs alone", () => {
    const { ofTheme } = likelyEchoOf([
      weekOf("2026-03-02", ["fig"], { themeId: "harbour", motifs: ["sea"] }),
    ]);
    expect(ofTheme("harbour", ["sea"])).toBeCloseTo(0.2, 9);
    // Of harbour, tide and sea, all telling the same, one is shared.
    expect(ofTheme("tide", ["sea"])).toBeCloseTo(0.2 / 3, 9);
    expect(ofTheme("tide", ["moon"])).toBe(0);
  });

  test("is nothing in a young series", () => {
    const { ofItem, ofTheme } = likelyEchoOf([]);
    expect([ofItem(item("fig", ["stars"])), ofTheme("harbour", ["sea"])]).toEqual([0, 0]);
  });

  test("is never less for what shares more", () => {
    const ids = fc.integer({ min: 0, max: 7 }).map((id) => `id-${id}`);
    const weeks = fc.array(
      fc.record({ foods: fc.array(ids, { minLength: 1, maxLength: 6 }), motifs: fc.array(ids) }),
      { minLength: 1, maxLength: 8 },
    );
    let more = 0;
    fc.assert(
      fc.property(weeks, fc.array(ids, { maxLength: 4 }), ids, (shown, motifs, id) => {
        const earlier = shown.map(({ foods, motifs: own }, week) =>
          weekOf(weeksLater(day("2025-01-06"), week), foods, { themeId: "shown", motifs: own }),
        );
        const { ofItem, ofTheme } = likelyEchoOf(earlier);
        const own = ofItem({ foodId: id, familyId: "none", trickIds: [] });
        expect(own).toBeGreaterThanOrEqual(0);
        expect(ofItem({ foodId: id, familyId: id, trickIds: [] })).toBeGreaterThanOrEqual(own);
        // A motif of a week shown in the place of one that no week has.
        const apart = ofTheme("new", [...motifs, "unseen"]);
        const nearer = ofTheme("new", [...motifs.filter((motif) => motif !== id), id]);
        const isShown = earlier.some((week) => week.motifs.includes(id));
        if (!isShown || motifs.includes(id)) return;
        expect(nearer).toBeGreaterThan(apart);
        expect(ofTheme("shown", [...motifs, id])).toBeGreaterThan(nearer);
        more += 1;
      }),
      { numRuns: 300, seed: 11 },
    );
    expect(more).toBeGreaterThan(50);
  });
});
