import { describe, expect, test } from "vitest";
import { checkLunch, guidanceFor, SHAPE_GUIDANCE, type Finding } from "#lib/safety/index.ts";
import { ALLOWED_AGAIN, CHOKING_ROWS } from "./choking.published.ts";
import { child, food, FOODS, item, lunch } from "./box.ts";

const at = (ageMonths: number | null, id: string, trickIds: readonly string[] = []): Finding[] =>
  checkLunch(lunch(item(id, { trickIds })), {
    children: [child({ ageMonths })],
    rules: [],
    journey: null,
    scheme: "off",
  });

describe("choking shape", () => {
  test.each(CHOKING_ROWS)("$food under $underYears: $asks ($source)", (row) => {
    const last = row.underYears * 12 - 1;
    for (const ageMonths of [12, last]) {
      const findings = at(ageMonths, row.food);
      expect(findings).toMatchObject([{ kind: "choking", level: row.level }]);
      expect(findings[0]?.remedy).toMatch(row.asks);
      expect(findings[0]?.sources.length).toBeGreaterThan(0);
    }
    for (const finding of at(last + 1, row.food)) expect(finding.level).toBe("note");
    expect(at(9 * 12, row.food)).toEqual([]);
  });
  test("kiwifruit is allowed again", () => {
    expect(at(30, ALLOWED_AGAIN)).toEqual([]);
    expect(guidanceFor(food(ALLOWED_AGAIN))).toBeUndefined();
  });
  test("a cut that does what is asked settles it; a shape that does not, does not", () => {
    expect(at(40, "grapes", ["quarters-lengthwise"])).toEqual([]);
    expect(at(40, "grapes", ["halved-coins"])).toHaveLength(1);
    expect(at(40, "hot-dog", ["halved-coins"])).toHaveLength(1);
    expect(at(40, "carrot-sticks", ["sticks"])).toHaveLength(1);
    expect(at(40, "carrot-sticks", ["thin-matchsticks"])).toEqual([]);
  });
  test("without a birth month it is told as a condition, and asks for the month", () => {
    const [finding] = at(null, "grapes");
    expect(finding).toMatchObject({ level: "note" });
    expect(finding?.remedy).toContain("birth month");
  });
  test("an older child is never told more of than a younger one", () => {
    const rank = { stop: 2, look: 1, note: 0 } as const;
    for (const { id } of FOODS) {
      let before = 2;
      for (const months of [6, 24, 47, 48, 59, 60, 71, 72, 120]) {
        const [worst] = at(months, id).map(({ level }) => rank[level]);
        expect([id, months, (worst ?? -1) <= before]).toEqual([id, months, true]);
        before = worst ?? -1;
      }
    }
  });
  test("every row names a source and speaks of some food of the catalogue", () => {
    for (const row of SHAPE_GUIDANCE) {
      expect(row.sources.length).toBeGreaterThan(0);
      expect([row.id, FOODS.some((one) => guidanceFor(one) === row)]).toEqual([row.id, true]);
    }
  });
});
