import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  describeArithmetic,
  describeGrams,
  describeNeedProblem,
  describeProof,
  type Arithmetic,
} from "#lib/shopping/index.ts";

const THREE_QUARTER_CUPS: Arithmetic = {
  name: "grapes",
  firstDay: day("2026-03-11"),
  portions: [{ count: 3, amount: 0.25, unit: "cup" }],
  edibleGrams: 92,
  asPurchasedGrams: 92,
  fromStockGrams: 0,
  fromOthersGrams: 0,
  packs: 1,
  packWord: "bag",
  packGrams: 340,
  leftGrams: 248,
  laterDays: [day("2026-03-12")],
  overGrams: 0,
};

test.each<[string, Partial<Arithmetic>, string]>([
  ["a bag for two days", {}, "3 × ¼ cup → 92 g → 1 bag of 340 g, 248 g left for Thursday"],
  [
    "nothing planned for the rest",
    { laterDays: [], overGrams: 248 },
    "3 × ¼ cup → 92 g → 1 bag of 340 g, 248 g left over",
  ],
  [
    "peel and stock",
    { asPurchasedGrams: 120, fromStockGrams: 20, leftGrams: 0 },
    "3 × ¼ cup → 92 g ready to eat → 120 g as bought → less 20 g at home → 1 bag of 340 g",
  ],
  [
    "two packs, unequal portions",
    {
      portions: [
        { count: 2, amount: 1, unit: "cup" },
        { count: 1, amount: 0.5, unit: "cup" },
      ],
      edibleGrams: 1250,
      asPurchasedGrams: 1250,
      fromOthersGrams: 600,
      packs: 2,
      leftGrams: 30,
      laterDays: [day("2026-03-12"), day("2026-03-13")],
    },
    "2 × 1 cup + 1 × ½ cup → 1.25 kg → less 600 g from another pack → 2 bags of 340 g, 30 g left for Thursday and Friday",
  ],
])("the arithmetic in words: %s", (_, own, words) => {
  expect(describeArithmetic({ ...THREE_QUARTER_CUPS, ...own })).toBe(words);
});

test("weights, refusals and a plan that is not proven are said plainly", () => {
  expect([4.26, 92.4, 1250].map(describeGrams)).toEqual(["4.3 g", "92 g", "1.25 kg"]);
  const why = { kind: "cup-weight-missing", food: "plums", unit: "cup" } as const;
  expect(describeNeedProblem({ kind: "cannot-weigh", itemId: "1", why })).toContain("plums");
  const money = (cents: number) => (cents / 100).toFixed(2);
  expect(describeProof({ cost: 5000, bound: 4950, proven: false }, money)).toBe(
    "Another plan could cost at most 1 % less (0.50); the search stopped there.",
  );
});
