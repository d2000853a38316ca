import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readEpisode, readFoods } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadReadyLunch } from "#lib/use-cases/load-ready-lunch.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { stepInLunch } from "#lib/use-cases/step-in-lunch.ts";
import { undoSwap } from "#lib/use-cases/undo-swap.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const ON = day("2026-03-12");

async function demo(): Promise<Context> {
  const context = testContext("2026-03-11");
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

async function inTheTin({ db }: Context): Promise<readonly string[]> {
  const lunch = (await readEpisode(db, day("2026-03-09")))?.lunches.find(({ date }) => date === ON);
  return (lunch?.items ?? [])
    .filter(({ fate }) => fate !== "scrapped")
    .map(({ food }) => String(food.id))
    .sort();
}

test("the lunch that stands ready is at home, quick, and nothing a child or the school keeps out", async () => {
  const context = await demo();
  const ready = await loadReadyLunch(context, ON);
  expect(ready?.minutes).toBeLessThanOrEqual(10);
  expect(ready?.foods.length).toBeGreaterThan(1);
  const foods = await readFoods(context.db);
  for (const { foodId, part } of ready?.foods ?? []) {
    const lots = await context.db.stock.findMany({ where: { foodId, goneOn: null } });
    expect(lots.length, foodId).toBeGreaterThan(0);
    const food = foods.find(({ id }) => id === foodId);
    expect(food?.parts).toContain(part);
    // Pepper must not have sesame; the school keeps a nut-free table.
    expect(food?.allergens).not.toContain("sesame");
    expect(food?.traits).not.toContain("nuts");
  }
  // What is recalled is no stand-in, and another takes its place or the place stays empty.
  const [first] = ready?.foods ?? [];
  await context.db.food.update({
    where: { id: first?.foodId ?? "" },
    data: { recalledAt: context.now },
  });
  const other = await loadReadyLunch(context, ON);
  expect(other?.foods.map(({ foodId }) => foodId) ?? []).not.toContain(first?.foodId);
});

test("it steps in for all that is planned, and each swap is taken back", async () => {
  const context = await demo();
  const ready = await loadReadyLunch(context, ON);
  const before = await inTheTin(context);
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date: ON } });
  const foods = (ready?.foods ?? []).map(({ foodId, part }) => ({ foodId, part }));
  const input = { lunchId: lunch.id, foods, reason: "the oven stayed cold" };
  expect(await stepInLunch(context, input)).toMatchObject({ ok: true });
  expect(await inTheTin(context)).toEqual(foods.map(({ foodId }) => foodId).sort());
  expect(await stepInLunch(context, input)).toEqual({
    ok: false,
    problem: { kind: "nothing-new" },
  });
  const scrapped = await context.db.lunchItem.findMany({
    where: { lunchId: lunch.id, fate: "scrapped" },
  });
  expect(scrapped.every(({ reason }) => reason === "the oven stayed cold")).toBe(true);
  for (const { id } of scrapped) {
    expect(await undoSwap(context, { itemId: id })).toMatchObject({ ok: true });
  }
  expect(await inTheTin(context)).toEqual(before);
});

test("once the lid is shut nothing stands ready, and nothing steps in as a whole", async () => {
  const context = await demo();
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date: ON } });
  await packLunch(context, { lunchId: lunch.id, minutes: null });
  expect(await loadReadyLunch(context, ON)).toBeUndefined();
  const foods = [{ foodId: "banana", part: "fruit" as const }];
  expect(await stepInLunch(context, { lunchId: lunch.id, foods, reason: "late" })).toEqual({
    ok: false,
    problem: { kind: "packed" },
  });
});
