import { describe, expect, test } from "vitest";
import { fractionOf } from "#lib/base/index.ts";
import { ClockTime, day } from "#lib/calendar/index.ts";
import {
  arithmeticOf,
  describeArithmetic,
  describeLeftovers,
  describeProof,
  describeRun,
  describeRunLine,
  describeUnmet,
  describeWeekCost,
  leftoversOf,
  needsOf,
  NO_OVERRIDES,
  planRuns,
  possibleTrips,
  problemFrom,
  replanRuns,
  standingOf,
  onHandOf,
  runItemsOf,
  tickLine,
  weekCosts,
  type FoodOnSale,
  type FoodToBuy,
  type Offer,
  type RunPlan,
  type RunProblem,
} from "#lib/shopping/index.ts";
import { faultsOf } from "#tests/support/check-runs.ts";
import { food, lot, NO_LIVES } from "./foods.ts";

const SAT = day("2026-03-07");
const TUE = day("2026-03-10");
const WED = day("2026-03-11");
const THU = day("2026-03-12");
const CHILDREN = ["one", "two", "three"];

const grapes = food("grapes", {
  gramsPerCup: 122.66666666666667,
  shelf: { ...NO_LIVES, fridgeDays: 7 },
});
const hummus = food("hummus", { shelf: { ...NO_LIVES, fridgeDays: 90, fridgeOpenedDays: 7 } });

function offer(productId: string, shopId: string, grams: number, priceCents: number): Offer {
  const [name = ""] = productId.split(" ");
  return { productId, name, packWord: "bag", shopId, packGrams: fractionOf(grams), priceCents };
}

function onSale(of: FoodToBuy, offers: Offer[]): readonly [string, FoodOnSale] {
  const { name, shelf } = of;
  return [of.id, { foodId: of.id, name, shelf, offers, isOnePiece: false }];
}

function week(uses: readonly (readonly [FoodToBuy, string, number, string])[]) {
  const items = uses.map(([of, on, amount, unit], index) => ({
    id: `item ${index}`,
    day: day(on),
    food: of,
    productId: null,
    amount,
    unit,
    eaters: CHILDREN.map((childId) => ({ childId, portionFactor: 1, share: null })),
  }));
  return needsOf(items).needs;
}

const FOODS = new Map([
  onSale(grapes, [
    offer("grapes bag", "greens", 340, 300),
    offer("grapes box", "market", 340, 280),
  ]),
  onSale(hummus, [offer("hummus tub", "market", 200, 250)]),
]);
const TRIPS = [
  { shopId: "greens", day: SAT, cents: 200 },
  { shopId: "market", day: SAT, cents: 300 },
  { shopId: "greens", day: TUE, cents: 250 },
  { shopId: "market", day: TUE, cents: 350 },
];
const NEEDS = week([
  [grapes, WED, 0.25, "cup"],
  [grapes, THU, 0.5, "cup"],
  [hummus, THU, 30, "g"],
]);

function problem(own: Partial<RunProblem> = {}): RunProblem {
  const items = runItemsOf(NEEDS, FOODS, []);
  return { trips: TRIPS, items, leadDays: 1, overrides: NO_OVERRIDES, ...own };
}

function wordsOf(plan: RunPlan): string[] {
  return plan.runs.flatMap((run) =>
    run.lines.map((line) => `${run.day} ${run.shopId} ${describeRunLine(line)}`),
  );
}

const money = (cents: number): string => (cents / 100).toFixed(2);

describe("a plan of runs", () => {
  test("buys all in one trip where that is least, and shows the arithmetic", () => {
    const plan = planRuns(problem());
    expect(wordsOf(plan)).toEqual([
      "2026-03-07 market grapes: 1 bag of 340 g",
      "2026-03-07 market hummus: 1 bag of 200 g",
    ]);
    expect(faultsOf(problem(), plan)).toEqual([]);
    const [line] = plan.runs[0]?.lines ?? [];
    const own = NEEDS.filter((need) => need.foodId === "grapes");
    const arithmetic = line && arithmeticOf(line, own, plan.fromStock);
    expect(arithmetic && describeArithmetic(arithmetic)).toBe(
      "3 × ¼ cup → 92 g → 1 bag of 340 g, 248 g left for Thursday, 64 g of it left over",
    );
    expect(describeProof(plan, money)).toContain("No other plan costs less");
    expect(plan.runs.map((run) => describeRun(run, (id) => id, money))).toEqual([
      "Sat 7 March, market: 2 lines, about 5.30.",
    ]);
  });

  test("goes again when food would not keep, and says what cannot be had in time", () => {
    const short = { ...grapes, shelf: { ...NO_LIVES, fridgeDays: 1 } };
    const foods = new Map([...FOODS, onSale(short, FOODS.get("grapes")?.offers.slice() ?? [])]);
    const plan = planRuns(problem({ items: runItemsOf(NEEDS, foods, []) }));
    expect(wordsOf(plan)[0]).toContain("2026-03-10");
    expect(plan.unmet.map(describeUnmet)).toEqual([
      "184 g of grapes for Thu 12 March: bought on any shopping day before, it would not keep until then. Add a later day, or swap it.",
    ]);
    const early = planRuns(problem({ trips: [] }));
    expect(early.unmet.map((miss) => miss.why)).toEqual(Array(3).fill("sold-nowhere"));
    const late = planRuns(problem({ trips: [{ shopId: "market", day: THU, cents: 0 }] }));
    expect(late.unmet.map((miss) => miss.why)).toEqual(Array(3).fill("no-trip-before"));
    expect([...early.unmet, ...late.unmet].map(describeUnmet).join()).toMatch(
      /sells it.*no shopping/,
    );
  });

  test("buys nothing that stock covers, and less where it covers a part", () => {
    const lots = [
      lot("tub", { grams: 90 }),
      lot("grapes", { foodId: "grapes", grams: 100, useBy: WED }),
    ];
    const stocked = problem({ items: runItemsOf(NEEDS, FOODS, onHandOf(lots, FOODS)) });
    const plan = planRuns(stocked);
    expect(wordsOf(plan)).toEqual(["2026-03-07 greens grapes: 1 bag of 340 g"]);
    expect(plan.fromStock.map(({ lotId, grams }) => [lotId, Math.round(grams)])).toEqual([
      ["grapes", 92],
      ["tub", 90],
    ]);
    expect(faultsOf(stocked, plan)).toEqual([]);
  });

  test("the user's decisions stick: a line, a shop, a day off, a shop that has none", () => {
    const [bag] = FOODS.get("grapes")?.offers ?? [];
    if (!bag) throw new Error("no offer");
    const fixed = { ...bag, itemId: "grapes", day: TUE, packs: 2, why: "by-hand" as const };
    const overrides = { ...NO_OVERRIDES, lines: [fixed] };
    expect(wordsOf(planRuns(problem({ overrides })))).toEqual([
      "2026-03-07 market hummus: 1 bag of 200 g",
      "2026-03-10 greens grapes: 2 bags of 340 g",
    ]);
    const greens = { ...NO_OVERRIDES, onlyAt: [{ itemId: "grapes", shopId: "greens" }] };
    expect(wordsOf(planRuns(problem({ overrides: greens })))[0]).toContain("greens grapes");
    const notSaturday = { ...NO_OVERRIDES, notTo: [{ shopId: null, day: SAT }] };
    expect(planRuns(problem({ overrides: notSaturday })).runs.map((run) => run.day)).toEqual([TUE]);
    const none = [{ productId: "grapes box", shopId: "market", from: SAT }];
    const without = planRuns(problem({ overrides: { ...NO_OVERRIDES, noneLeft: none } }));
    expect(wordsOf(without)[0]).toContain("greens grapes");
  });

  test("a product asked for by name is bought, and the food's other needs take it too", () => {
    const [first, ...rest] = NEEDS;
    if (!first) throw new Error("no need");
    const items = runItemsOf([{ ...first, productId: "grapes bag" }, ...rest], FOODS, []);
    expect(items.map((item) => item.id)).toEqual(["grapes/grapes bag", "hummus"]);
    expect(wordsOf(planRuns(problem({ items }))).join()).toMatch(/greens grapes: 1 bag of 340 g/);
  });
});

describe("when the week changes", () => {
  test("changing one lunch changes only the lines of its food", () => {
    const before = problem();
    const plan = planRuns(before);
    const more = week([[hummus, WED, 60, "g"]]);
    const after = problem({ items: runItemsOf([...NEEDS, ...more], FOODS, []) });
    const next = replanRuns(standingOf(before, plan), after);
    expect(wordsOf(next)).toEqual([
      "2026-03-07 market grapes: 1 bag of 340 g",
      "2026-03-07 market hummus: 2 bags of 200 g",
    ]);
    expect(faultsOf(after, next)).toEqual([]);
    expect(replanRuns(standingOf(before, plan), before)).toMatchObject({
      runs: plan.runs,
      cost: plan.cost,
    });
  });

  test("they had none: what is ticked stays, the rest goes on from there", () => {
    const before = problem();
    const plan = planRuns(before);
    const [none, bought] = plan.runs[0]?.lines ?? [];
    if (!none || !bought) throw new Error("no lines");
    const tick = { packs: 1, paidCents: 199 };
    const first = tickLine(new Map(), { lineId: bought.id, state: "bought", ...tick }, "phone");
    const missing = { lineId: none.id, state: "none-left", packs: 0, paidCents: null } as const;
    const ticks = tickLine(first, missing, "phone");
    const after = problemFrom(before, plan, ticks, { shopId: "market", day: SAT });
    const next = replanRuns(standingOf(before, plan), after);
    expect(wordsOf(next)).toEqual([
      "2026-03-07 greens grapes: 1 bag of 340 g",
      "2026-03-07 market hummus: 1 bag of 200 g",
    ]);
    expect(next.runs.flatMap((run) => run.lines).find((line) => line.id === bought.id)?.fixed).toBe(
      "bought",
    );
    const [cost] = weekCosts(next.runs, ticks, 400);
    expect(cost && describeWeekCost(cost, money)).toBe("4.99 of 4.00, 0.99 over.");
    expect(cost).toMatchObject({ week: "2026-03-02", paidCents: 199 });
  });

  test("leftovers are offered back with the day they have to be used by", () => {
    expect(describeLeftovers(leftoversOf(planRuns(problem()).runs))).toEqual([
      "64 g of grapes, by Sat 14 March",
      "110 g of hummus, by Thu 19 March",
    ]);
    const undated = { lineId: "x", itemId: "i", useBy: null };
    const left = ["rice", "oats"].map((name) => ({ ...undated, name, grams: 50 }));
    expect(describeLeftovers(left)).toEqual([
      "50 g of rice, 50 g of oats: no use-by known, look at the label",
    ]);
  });
});

test("a trip is possible when the shop is open for a visit while the user goes shopping", () => {
  const time = (text: string) => ClockTime.parse(text);
  const open = [{ weekday: 6 as const, from: time("09:00"), until: time("12:00") }];
  const shops = [
    { id: "greens", open, closedOn: [day("2026-03-14")], minutes: 30, tripCents: 200 },
    { id: "slow", open, closedOn: [], minutes: 90, tripCents: 100 },
  ];
  const mine = [{ weekday: 6 as const, from: time("11:00"), until: time("18:00") }];
  expect(possibleTrips(shops, mine, SAT, day("2026-03-15"))).toEqual([
    { shopId: "greens", day: SAT, cents: 200 },
  ]);
});
