import { describe, expect, test } from "vitest";
import { addDays, day } from "#lib/calendar/index.ts";
import { randomFrom } from "#lib/base/index.ts";
import {
  byStanding,
  eatenByPart,
  eatenByWeek,
  estimateAll,
  newFoods,
  trickEffects,
  wasteOf,
  type Eaten,
  type LedgerLine,
  type TrickedVerdict,
  type Verdict,
} from "#lib/reactions/index.ts";

const MONDAY = day("2026-03-09");

function verdict(foodId: string, offset: number, eaten: Eaten | null): Verdict {
  const on = addDays(MONDAY, offset);
  return { childId: "biscuit", foodId, familyId: foodId, day: on, eaten, face: 50 };
}

const LINES: LedgerLine[] = [
  { verdict: verdict("rice", 0, 4), part: "grain", cents: 40 },
  { verdict: verdict("pear", 1, 1), part: "fruit", cents: 60 },
  { verdict: verdict("pear", 7, 3), part: "fruit", cents: null },
  { verdict: verdict("dip", 8, null), part: "dip", cents: 30 },
];

describe("the ledger", () => {
  test("eaten share by part and by week", () => {
    expect([...eatenByPart(LINES)]).toEqual([
      ["grain", { share: 1, verdicts: 1 }],
      ["fruit", { share: 0.5, verdicts: 2 }],
    ]);
    expect([...eatenByWeek([...LINES].reverse())]).toEqual([
      ["2026-03-09", { share: 0.625, verdicts: 2 }],
      ["2026-03-16", { share: 0.75, verdicts: 1 }],
    ]);
  });
  test("waste in money tells what it could not price", () => {
    expect(wasteOf(LINES)).toEqual({ wastedCents: 45, packedCents: 100, unpriced: 2 });
  });
  test("foods by standing, and new foods that stayed", () => {
    const old = Array.from({ length: 10 }, (_, week) => verdict("rice", week * 7 - 70, 4));
    const fresh = Array.from({ length: 10 }, (_, index) => verdict("plum", index * 2, 4));
    const { met } = estimateAll([...old, ...fresh, verdict("kale", 1, 0)], {
      today: addDays(MONDAY, 20),
    });
    expect(newFoods(met, "biscuit", MONDAY)).toEqual({ tried: 2, stayed: 1 });
    const groups = byStanding(met, "biscuit");
    expect(
      groups
        .get("dependable")
        ?.map(({ foodId }) => foodId)
        .sort(),
    ).toEqual(["plum", "rice"]);
    expect(groups.get("meeting")?.map(({ foodId }) => foodId)).toEqual(["kale"]);
    expect(byStanding(met, "pepper").size).toBe(0);
  });
});

describe("tricks", () => {
  test("one matched food: the plain difference of means, weights aside", () => {
    const tricked: TrickedVerdict[] = [
      { verdict: verdict("pear", 0, 4), trickIds: ["star"] },
      { verdict: verdict("pear", 1, 2), trickIds: ["star"] },
      { verdict: verdict("pear", 2, 1), trickIds: [] },
      { verdict: verdict("rice", 3, 4), trickIds: ["star"] },
    ];
    const [effect] = trickEffects(tricked);
    expect(effect).toMatchObject({ trickId: "star", withTrick: 2, without: 1, difference: 0.5 });
    expect(effect?.low).toBeLessThan(0.5);
    expect(effect?.high).toBeGreaterThan(0.5);
  });
  test("a trick worn only by favourites gains nothing by it", () => {
    const random = randomFrom("favourites");
    const tricked = Array.from({ length: 600 }, (_, index) => {
      const isFavourite = index % 2 === 0;
      const eaten = (isFavourite ? 3 + random.below(2) : random.below(3)) as Eaten;
      const wears = random.next() < (isFavourite ? 0.9 : 0.1);
      const food = isFavourite ? "rice" : "kale";
      return { verdict: verdict(food, index, eaten), trickIds: wears ? ["star"] : [] };
    });
    const [effect] = trickEffects(tricked);
    expect(Math.abs(effect?.difference ?? 1)).toBeLessThan(0.08);
    expect(effect?.low).toBeLessThan(0);
    expect(effect?.high).toBeGreaterThan(0);
  });
  test("95 % intervals hold the true difference in about 95 of 100 series", () => {
    let held = 0;
    for (let series = 0; series < 300; series += 1) {
      const random = randomFrom(`trick-${series}`);
      const tricked = Array.from({ length: 120 }, (_, index) => {
        const trickIds = random.next() < 0.4 ? ["star"] : [];
        const mean = [0.3, 0.5, 0.6][index % 3] ?? 0.5;
        const share = mean + (trickIds.length > 0 ? 0.15 : 0);
        let quarters = 0;
        for (let quarter = 0; quarter < 4; quarter += 1) if (random.next() < share) quarters += 1;
        return { verdict: verdict(`food-${index % 3}`, index, quarters as Eaten), trickIds };
      });
      const [effect] = trickEffects(tricked);
      if (effect && effect.low <= 0.15 && 0.15 <= effect.high) held += 1;
    }
    expect(held / 300).toBeGreaterThan(0.91);
    expect(held / 300).toBeLessThan(0.99);
  });
});
