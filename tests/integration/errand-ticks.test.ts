import { describe, expect, test } from "vitest";
import { addDays } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { ChangeRunsInput } from "#lib/use-cases/errands/change-runs.input.ts";
import { changeRuns } from "#lib/use-cases/errands/change-runs.ts";
import { loadErrands } from "#lib/use-cases/errands/load-errands.ts";
import { planAnew } from "#lib/use-cases/errands/plan-anew.ts";
import { TickLinesInput } from "#lib/use-cases/errands/tick-lines.input.ts";
import { tickLines } from "#lib/use-cases/errands/tick-lines.ts";
import { endWaiting } from "#lib/use-cases/solver/worker-pool.ts";
import { errandSeries, MONDAY, SATURDAY, tickOf } from "#tests/support/errand-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const WEEK = [
  { on: "2026-03-16", foodId: "grapes", amount: 50, unit: "g" },
  { on: "2026-03-17", foodId: "hummus", amount: 30, unit: "g" },
  { on: "2026-03-18", foodId: "cucumber-slices", amount: 50, unit: "g" },
  { on: "2026-03-19", foodId: "cheddar-cheese", amount: 30, unit: "g" },
];

const NEXT_MONDAY = addDays(MONDAY, 7);
/** More than one pack holds, so that next week buys again. */
const HUMMUS = { foodId: "hummus", amount: 300, unit: "g" };

async function shop(): Promise<Context> {
  const context = testContext(SATURDAY);
  await errandSeries(context, MONDAY, WEEK);
  return context;
}

async function viewOf(context: Context) {
  const view = await loadErrands(context, MONDAY);
  if (!view) throw new Error("the week can be opened");
  return view;
}

async function linesOf(context: Context) {
  const { runs } = await viewOf(context);
  return runs.flatMap((run) =>
    run.aisles.flatMap(({ lines }) =>
      lines.map((line) => ({ ...line, on: run.day, at: run.shopId })),
    ),
  );
}

async function lineFor(context: Context, foodId: string) {
  const line = (await linesOf(context)).find((one) => one.foodId === foodId);
  if (!line) throw new Error(`no line for ${foodId}`);
  return line;
}

const send = (context: Context, ...ticks: ReturnType<typeof tickOf>[]) =>
  tickLines(context, TickLinesInput.parse({ monday: MONDAY, ticks }));

const decide = (context: Context, change: object) =>
  changeRuns(context, ChangeRunsInput.parse({ monday: MONDAY, ...change }));

describe("ticking", () => {
  test("what was bought becomes stock and a price, once, and leaves every other line alone", async () => {
    const context = await shop();
    const before = await linesOf(context);
    const grapes = await lineFor(context, "grapes");
    const tick = tickOf(grapes, "bought", 1, { paidCents: 299 });
    await send(context, tick);
    await send(context, tick);
    expect(await context.db.stock.findMany()).toMatchObject([
      {
        foodId: "grapes",
        productId: "grapes-pack",
        grams: 340,
        boughtOn: SATURDAY,
        paidCents: 299,
      },
    ]);
    const price = { productId: "grapes-pack", shopId: grapes.at, on: SATURDAY };
    expect(await context.db.price.findMany({ where: price })).toMatchObject([{ cents: 299 }]);
    const after = await linesOf(context);
    expect(after.map((line) => line.id).sort()).toEqual(before.map((line) => line.id).sort());
    expect(after.find((line) => line.id === grapes.id)).toMatchObject({
      ...{ state: "bought", paidCents: 299, arithmetic: grapes.arithmetic },
    });
    const others = (lines: typeof before) => lines.filter((line) => line.id !== grapes.id);
    expect(others(after)).toEqual(others(before));
    expect((await viewOf(context)).cost.paidCents).toBe(299);
  });

  test("a tick taken back takes its lot and its price along", async () => {
    const context = await shop();
    const before = await linesOf(context);
    const grapes = await lineFor(context, "grapes");
    await send(context, tickOf(grapes, "bought", 1, { paidCents: 299 }));
    await send(context, tickOf(grapes, "open", 2));
    expect(await context.db.stock.count()).toBe(0);
    expect(await context.db.price.count({ where: { on: SATURDAY } })).toBe(0);
    const state = ({ id, packs, state: now }: (typeof before)[number]) => [id, packs, now];
    expect((await linesOf(context)).map(state)).toEqual(before.map(state));
  });

  test("two people who tick at once agree, whoever is heard first", async () => {
    const outcomes = await Promise.all(
      [false, true].map(async (isReversed) => {
        const context = await shop();
        const [grapes, hummus] = [
          await lineFor(context, "grapes"),
          await lineFor(context, "hummus"),
        ];
        const ours = [
          tickOf(grapes, "bought", 1, { device: "ours" }),
          tickOf(hummus, "bought", 2, { device: "ours" }),
        ];
        const theirs = [
          tickOf(grapes, "none-left", 1, { device: "theirs" }),
          tickOf(hummus, "open", 1, { device: "theirs" }),
        ];
        for (const batch of isReversed ? [theirs, ours] : [ours, theirs]) {
          await send(context, ...batch);
        }
        const { ticks } = await send(context, ours[0] as (typeof ours)[0]);
        const stock = await context.db.stock.findMany({ select: { foodId: true, grams: true } });
        return { ticks, stock };
      }),
    );
    expect(outcomes[0]).toEqual(outcomes[1]);
    expect(outcomes[0]?.ticks.map(({ state }) => state)).toEqual(["none-left", "bought"]);
    expect(outcomes[0]?.stock).toMatchObject([{ foodId: "hummus" }]);
  });

  test("changing one lunch afterwards changes its food's lines alone, and what was ticked stays ticked", async () => {
    const context = await shop();
    const grapes = await lineFor(context, "grapes");
    await send(context, tickOf(grapes, "bought"));
    const before = await linesOf(context);
    await context.db.lunchItem.update({
      where: { id: "2026-03-16-grapes" },
      data: { amount: 400 },
    });
    const after = await linesOf(context);
    const own = after.filter((line) => line.foodId === "grapes");
    expect(own.map(({ state }) => state).sort()).toEqual(["bought", "open"]);
    expect(new Set(after.map((line) => line.id)).size).toBe(after.length);
    const others = (lines: typeof before) => lines.filter((line) => line.foodId !== "grapes");
    expect(others(after)).toEqual(others(before));
    // 400 g × 1.7 ÷ 0.96 (yield, USDA ERS 2022) is 708 g: two more packs of 340 g beside the one bought.
    expect(own.map(({ packs }) => packs).sort()).toEqual([1, 2]);
    await send(context, tickOf(own.find((line) => line.state === "open") ?? grapes, "bought", 2));
    expect((await linesOf(context)).filter((line) => line.foodId === "grapes")).toMatchObject([
      { state: "bought" },
      { state: "bought" },
    ]);
    expect(await context.db.stock.count()).toBe(2);
  });

  test("a food bought at one shop only is bought there in every week, whoever else sells it", async () => {
    const context = await shop();
    const sellersOf = async () =>
      (await linesOf(context))
        .filter((line) => line.foodId === "hummus")
        .map(({ at, isOnlyThereByHand }) => [at, isOnlyThereByHand]);
    // Only the market is on record as selling hummus: the user knows better.
    expect(await sellersOf()).toEqual([["market", false]]);
    await decide(context, { kind: "only-at", foodId: "hummus", shopId: "grocer" });
    expect(await sellersOf()).toEqual([["grocer", true]]);
    const view = await loadErrands(context, MONDAY);
    expect(view?.onlyAt).toEqual([{ foodId: "hummus", food: "hummus", shopName: "Grocer" }]);
    await context.db.episode.create({
      data: {
        number: 2,
        weekOf: NEXT_MONDAY,
        lunches: {
          create: { date: addDays(NEXT_MONDAY, 1), items: { create: { ...HUMMUS, part: "dip" } } },
        },
      },
    });
    const shops = ((await loadErrands(context, NEXT_MONDAY))?.runs ?? []).filter((run) =>
      run.aisles.some((aisle) => aisle.lines.some((line) => line.foodId === "hummus")),
    );
    expect(shops.map(({ shopId }) => shopId)).toEqual(["grocer"]);
    await decide(context, { kind: "only-at", foodId: "hummus", shopId: "" });
    expect((await loadErrands(context, NEXT_MONDAY))?.onlyAt).toEqual([]);
  });

  test("when they had none, it is sought elsewhere; what was left out is not sought again", async () => {
    const context = await shop();
    await decide(context, { kind: "go", shopId: "grocer", day: SATURDAY });
    await decide(context, { kind: "only-at", foodId: "grapes", shopId: "grocer" });
    const grapes = await lineFor(context, "grapes");
    expect(grapes.at).toBe("grocer");
    await decide(context, { kind: "only-at", foodId: "grapes", shopId: "" });
    await send(context, tickOf(grapes, "none-left"));
    const own = (await linesOf(context)).filter((line) => line.foodId === "grapes");
    expect(own.map(({ at, state }) => [at, state])).toContainEqual(["market", "open"]);
    expect(own.find((line) => line.id === grapes.id)?.state).toBe("none-left");

    const hummus = await lineFor(context, "hummus");
    await send(context, tickOf(hummus, "dropped", 2));
    expect((await linesOf(context)).filter((line) => line.foodId === "hummus")).toMatchObject([
      { id: hummus.id, state: "dropped" },
    ]);
  });

  test("a tick for a line that is neither planned nor recorded is let go, and the others are kept", async () => {
    const context = await shop();
    const grapes = await lineFor(context, "grapes");
    const unknown = tickOf(
      { id: "2026-03-14|grocer|pear|x", on: SATURDAY, at: "grocer", packs: 1 },
      "bought",
    );
    const { goneIds, ticks } = await send(context, unknown, tickOf(grapes, "bought"));
    expect(goneIds).toEqual([unknown.lineId]);
    expect(ticks.map(({ lineId }) => lineId)).toEqual([grapes.id]);
    expect(await context.db.errandLine.count()).toBe(1);
  });
});

describe("decisions by hand", () => {
  test("stick: a line on another trip, a run made, a run not made, a shop for a food", async () => {
    const context = await shop();
    const cheese = await lineFor(context, "cheddar-cheese");
    const to = { shopId: "market", day: "2026-03-18" };
    await decide(context, { kind: "fix-line", ...to, lineId: cheese.id, packs: 2 });
    await decide(context, { kind: "stay-away", shopId: "grocer", day: SATURDAY });
    const moved = (await linesOf(context)).filter((line) => line.foodId === "cheddar-cheese");
    expect(moved).toMatchObject([{ at: "market", on: "2026-03-18", packs: 2, isByHand: true }]);
    await context.db.lunchItem.update({ where: { id: "2026-03-17-hummus" }, data: { amount: 90 } });
    await planAnew(context, MONDAY);
    await endWaiting();
    const after = await linesOf(context);
    expect(after.filter((line) => line.foodId === "cheddar-cheese")).toEqual(moved);
    expect(after.some((line) => line.at === "grocer" && line.on === SATURDAY)).toBe(false);
    await decide(context, { kind: "free-line", lineId: moved[0]?.id });
    expect((await lineFor(context, "cheddar-cheese")).isByHand).toBe(false);
  });

  test("a line added by hand is ticked like any other; words that name a food become stock when bought", async () => {
    const context = await shop();
    const trip = { shopId: "market", day: SATURDAY };
    await decide(context, { kind: "add-line", ...trip, label: "kitchen paper", packs: 2 });
    const paper = (await linesOf(context)).find((line) => line.name === "kitchen paper");
    expect(paper).toMatchObject({ packs: 2, isByHand: true, foodId: null });
    await send(context, tickOf(paper ?? (await lineFor(context, "grapes")), "bought"));
    expect((await linesOf(context)).find((line) => line.id === paper?.id)?.state).toBe("bought");
    expect(await context.db.stock.count()).toBe(0);
  });

  test("refuse a day that is over, a shop that is gone and a line that is ticked", async () => {
    const context = await shop();
    const grapes = await lineFor(context, "grapes");
    const go = { kind: "go", shopId: "market", day: "2026-03-13" };
    expect(await decide(context, go)).toEqual({ ok: false, problem: { kind: "day-over" } });
    const away = { kind: "go", shopId: "nowhere", day: SATURDAY };
    expect(await decide(context, away)).toEqual({ ok: false, problem: { kind: "shop-gone" } });
    await send(context, tickOf(grapes, "bought"));
    const fix = {
      kind: "fix-line",
      shopId: grapes.at,
      day: grapes.on,
      lineId: grapes.id,
      packs: 3,
    };
    expect(await decide(context, fix)).toMatchObject({ ok: false });
    expect(await lineFor(context, "grapes")).toMatchObject({ state: "bought", packs: 1 });
  });
});
