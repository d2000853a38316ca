import { describe, expect, test } from "vitest";
import { fractionOf, numberOf } from "#lib/base/index.ts";
import { day } from "#lib/calendar/index.ts";
import {
  allocate,
  describeOwed,
  describeSettleProblem,
  describeStockProblem,
  describeUseFirst,
  freezeLot,
  gramsToPar,
  lastDayOf,
  livesOf,
  openLot,
  parGrams,
  settleOwed,
  stillOwed,
  supplyOfLot,
  inOrderOfUse,
  takeFromLot,
  usualPlace,
  type OwedFood,
} from "#lib/shopping/index.ts";
import { sharedRows } from "../catalog/shared-catalogue.ts";
import { lot, NO_LIVES } from "./foods.ts";

const MON = day("2026-03-09");
const WED = day("2026-03-11");
const FRI = day("2026-03-13");

/** USDA FoodKeeper v128, product 181, hummus, commercial: 3 months, 7 days once opened. */
const HUMMUS = { ...NO_LIVES, fridgeDays: 90, fridgeOpenedDays: 7 };
/** USDA FoodKeeper v128, product 264, melons: 2 weeks, cut 2–4 days (the shorter is taken). */
const MELON = { ...NO_LIVES, fridgeDays: 14, cutDays: 2 };
/** USDA FoodKeeper v128, product 370, applesauce: pantry 12–18 months, opened 7–10 days. */
const APPLESAUCE = { ...NO_LIVES, pantryDays: 360, fridgeOpenedDays: 7 };

describe("lives", () => {
  test("a label's use-by stands in for the reference life, sooner or later", () => {
    expect(lastDayOf(lot("a", { boughtOn: MON }), HUMMUS)).toBe("2026-06-07");
    expect(lastDayOf(lot("a", { boughtOn: MON, useBy: WED }), HUMMUS)).toBe(WED);
    const late = day("2026-09-01");
    expect(lastDayOf(lot("a", { boughtOn: MON, useBy: late }), HUMMUS)).toBe(late);
  });

  test("an opened, cut or cooked lot ends with that shorter life", () => {
    expect(lastDayOf(lot("a", { openedOn: MON, useBy: day("2026-05-01") }), HUMMUS)).toBe(
      "2026-03-16",
    );
    expect(lastDayOf(lot("a", { openedOn: MON, useBy: WED }), HUMMUS)).toBe(WED);
    expect(lastDayOf(lot("a", { boughtOn: MON, cutOn: WED }), MELON)).toBe(FRI);
    expect(lastDayOf(lot("a", { preparedOn: MON }), { ...NO_LIVES, preparedDays: 4 })).toBe(FRI);
    expect(lastDayOf(lot("a"), HUMMUS)).toBeNull();
  });

  test("a pack of one piece lives as cut once opened; an opened jar moves to the refrigerator", () => {
    expect(livesOf(MELON, "fridge", true)).toEqual({ unopenedDays: 14, openedDays: 2 });
    expect(livesOf(MELON, "fridge")).toEqual({ unopenedDays: 14, openedDays: null });
    expect(livesOf(APPLESAUCE, "pantry")).toEqual({ unopenedDays: 360, openedDays: 7 });
    expect(usualPlace(APPLESAUCE)).toBe("pantry");
    expect(usualPlace(HUMMUS)).toBe("fridge");
  });

  const rows = sharedRows("data/foodkeeper/foodkeeper_v128_products.csv");
  test.runIf(rows.length > 0)("the lives above are the rows of the shared file", () => {
    const cell = (id: string, column: string) =>
      rows.find((candidate) => candidate["ID"] === id)?.[column];
    expect([cell("181", "DOP_Refrigerate_Min"), cell("181", "DOP_Refrigerate_Metric")]).toEqual([
      "3",
      "Months",
    ]);
    expect(cell("181", "Refrigerate_After_Opening_Min")).toBe(String(HUMMUS.fridgeOpenedDays));
    expect(cell("264", "Refrigerate_After_Opening_Min")).toBe(String(MELON.cutDays));
    expect(cell("370", "DOP_Pantry_Min")).toBe(String(APPLESAUCE.pantryDays / 30));
    expect(cell("370", "Refrigerate_After_Opening_Min")).toBe(String(APPLESAUCE.fridgeOpenedDays));
  });
  if (rows.length === 0) console.warn("Left out: 1 check of storage rows (no shared folder)");
});

describe("stock", () => {
  test("what ends soonest is used first, and opening shortens a life", () => {
    const supplies = [
      supplyOfLot(lot("closed", { boughtOn: MON }), HUMMUS),
      supplyOfLot(lot("label", { useBy: WED }), HUMMUS),
    ];
    const needs = [MON, WED, day("2026-03-25")].map((on) => ({ day: on, grams: fractionOf(60) }));
    const { uses, net, left } = allocate(needs, supplies);
    expect(uses.map((use) => [use.supplyId, use.day, numberOf(use.grams)])).toEqual([
      ["label", MON, 60],
      ["label", WED, 40],
      ["closed", WED, 20],
    ]);
    expect(net.map((need) => [need.day, numberOf(need.grams)])).toEqual([["2026-03-25", 60]]);
    expect(left.map((supply) => [supply.id, supply.until])).toEqual([["closed", "2026-03-18"]]);
  });

  test("the order to use them is said in words", () => {
    const lots = [lot("b", { useBy: FRI }), lot("a", { openedOn: day("2026-03-03") }), lot("c")];
    const order = inOrderOfUse(lots, () => HUMMUS, MON);
    expect(order.map((entry) => describeUseFirst(entry, "hummus"))).toEqual([
      "hummus, 100 g, opened: by Tue 10 March, tomorrow",
      "hummus, 100 g: by Fri 13 March, in 4 days",
      "hummus, 100 g: no use-by known, look at the label",
    ]);
  });

  test("using opens a lot, empties it, and never takes more than is there", () => {
    expect(takeFromLot(lot("a"), 40, MON)).toEqual({
      ok: true,
      value: lot("a", { grams: 60, openedOn: MON }),
    });
    expect(takeFromLot(lot("a"), 100, MON)).toEqual({ ok: true, value: null });
    const refused = takeFromLot(lot("a"), 101, MON);
    expect(!refused.ok && describeStockProblem(refused.problem)).toBe("Only 100 g are left.");
    expect(openLot(openLot(lot("a"), MON), WED).openedOn).toBe(MON);
  });

  test("freezing starts the freezer life, and is refused past the last day or without a source", () => {
    const frozen = freezeLot(lot("a", { useBy: WED }), { ...HUMMUS, freezerDays: 30 }, WED);
    if (!frozen.ok) throw new Error(frozen.problem.kind);
    expect(lastDayOf(frozen.value, { ...HUMMUS, freezerDays: 30 })).toBe("2026-04-10");
    expect(freezeLot(lot("a"), HUMMUS, MON)).toMatchObject({
      problem: { kind: "freezing-not-advised" },
    });
    expect(freezeLot(lot("a", { useBy: MON }), { ...HUMMUS, freezerDays: 30 }, WED)).toMatchObject({
      problem: { kind: "past-its-life", lastDay: MON },
    });
  });

  test("par is use per day times lead days and days between runs, plus the reserve", () => {
    const rule = { gramsPerDay: 30.5, leadDays: 1, daysBetweenRuns: 7, reserveGrams: 50 };
    expect(numberOf(parGrams(rule))).toBe(294);
    expect(numberOf(gramsToPar(rule, 100))).toBe(194);
    expect(numberOf(gramsToPar(rule, 294))).toBe(0);
  });
});

describe("owed food", () => {
  const pears: OwedFood = {
    id: "1",
    foodId: "pears",
    foodName: "pears",
    grams: 200,
    since: MON,
    useBy: WED,
    settled: null,
  };

  test("stays owed until it is used, frozen or let go, soonest use-by first", () => {
    const plums = { ...pears, id: "2", foodName: "plums", useBy: null };
    const used = settleOwed({ ...pears, id: "3" }, "used", WED);
    if (!used.ok) throw new Error(used.problem.kind);
    const open = stillOwed([plums, used.value, pears], FRI);
    expect(open.map(describeOwed)).toEqual([
      "pears, 200 g, from Mon 9 March: by Wed 11 March, 2 days over",
      "plums, 200 g, from Mon 9 March: no use-by known, look at the label",
    ]);
    const again = settleOwed(used.value, "let-go", FRI);
    expect(!again.ok && describeSettleProblem(again.problem)).toContain("Wed 11 March");
  });

  test("is neither used nor frozen after its use-by", () => {
    expect(settleOwed(pears, "frozen", FRI).ok).toBe(false);
    expect(settleOwed(pears, "used", FRI).ok).toBe(false);
    expect(settleOwed(pears, "let-go", FRI).ok).toBe(true);
  });
});
