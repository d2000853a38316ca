import { expect, test } from "vitest";
import { addDays, clockTime, day, type Day } from "#lib/calendar/index.ts";
import { writeSettings } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { findNextLunch } from "#lib/use-cases/find-next-lunch.ts";
import { loadMise, type MiseView } from "#lib/use-cases/load-mise.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { PencilWeekInput } from "#lib/use-cases/pencil-week.input.ts";
import { saveLunch } from "#lib/use-cases/save-lunch.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tickPrepStep } from "#lib/use-cases/tick-step.ts";
import { TickStepInput } from "#lib/use-cases/tick-step.input.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONDAY = day("2026-03-09");
const ZONE = "Europe/Oslo";
const SOUP = "vegetable-soup/Heat until steaming all through (74 °C)";
const STAR = "cucumber-slices/trick:star-cutter";

const item = (foodId: string, trickIds: string[] = []) => ({
  ...{ foodId, part: "main" as const, amount: 80, unit: "g", id: "", shopId: "", shares: [] },
  trickIds,
});

/** A series with one child and the first two days of a week composed. */
async function twoDays(): Promise<Context> {
  const context = testContext("2026-03-09");
  const children = [{ privateName: "Ines", onScreenName: "Biscuit" }];
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children }));
  await pencilWeek(context, PencilWeekInput.parse({ monday: MONDAY, title: "Night Train" }));
  for (const date of [MONDAY, addDays(MONDAY, 1)])
    await compose(context, date, [
      item("vegetable-soup"),
      item("cucumber-slices", ["star-cutter"]),
    ]);
  return context;
}

async function compose(context: Context, date: Day, items: ReturnType<typeof item>[]) {
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date } });
  const { id: lunchId, revision, angle } = lunch;
  const outcome = await saveLunch(context, { lunchId, revision, angle, items });
  expect(outcome.ok).toBe(true);
}

async function mise(context: Context, date = MONDAY, from?: string): Promise<MiseView> {
  const view = await loadMise(context, date, ZONE, from === undefined ? undefined : clock(from));
  if (!view) throw new Error("no lunch");
  return view;
}
const clock = (text: string) => clockTime(Number(text.slice(0, 2)) * 60 + Number(text.slice(3)));
const stepOf = (view: MiseView, id: string) =>
  [...view.evening, ...view.morning].find((step) => step.id === id);
const tick = async (context: Context, stepKey: string, minutes: number | null, isDone = true) =>
  tickPrepStep(
    context,
    TickStepInput.parse({ lunchId: (await mise(context)).lunchId, stepKey, minutes, isDone }),
  );

test("a morning with soup is proven, soup last before the packing", async () => {
  const view = await mise(await twoDays());
  expect(view.proof).toMatch(/^07:\d\d is proven: no order of these \d steps begins later\.$/);
  expect(view.troubles).toEqual([]);
  const [fill, pack] = view.morning.slice(-2);
  expect(fill?.line).toBe("Vegetable soup: fill the food flask and close it");
  expect(fill?.to).toBe(pack?.from);
  expect(pack?.ends).toBe(view.times.departure);
  expect(view.evening.map(({ id }) => id)).toContain("cucumber-slices/Wash and slice");
});

test("minutes recorded teach the next morning and leave the one at hand as it was", async () => {
  const context = await twoDays();
  const before = stepOf(await mise(context), SOUP);
  expect(before).toMatchObject({ minutes: 6, recordings: 0, tick: null });
  expect(await tick(context, SOUP, 10)).toEqual({ ok: true, value: undefined });
  expect(stepOf(await mise(context), SOUP)).toMatchObject({
    minutes: 6,
    // 09:00 UTC in March is 10:00 in Oslo.
    tick: { at: "10:00", minutes: 10 },
  });
  // (3 · 6 + 10) ÷ 4 = 7.
  expect(stepOf(await mise(context, addDays(MONDAY, 1)), SOUP)).toMatchObject({
    minutes: 7,
    recordings: 1,
  });
});

test("ticking twice keeps one record, taking the tick back takes the minutes back", async () => {
  const context = await twoDays();
  await tick(context, STAR, 4);
  await tick(context, STAR, 5);
  expect(await context.db.prepTiming.findMany()).toMatchObject([{ minutes: 5, on: MONDAY }]);
  expect(await context.db.stepTick.count()).toBe(1);
  await tick(context, STAR, null, false);
  expect(await context.db.prepTiming.count()).toBe(0);
  expect(await context.db.stepTick.count()).toBe(0);
});

test("the packing learns too, from the ticks of earlier lunches", async () => {
  const context = await twoDays();
  const usual = stepOf(await mise(context), "pack")?.minutes ?? 0;
  await tick(context, "pack", usual + 8);
  expect(stepOf(await mise(context, addDays(MONDAY, 1)), "pack")).toMatchObject({
    minutes: usual + 2,
    recordings: 1,
  });
});

test("planned anew, what was ticked is left out and nothing begins before then", async () => {
  const context = await twoDays();
  await tick(context, STAR, null);
  const view = await mise(context, MONDAY, "07:10");
  expect(view.done.map(({ id }) => id)).toEqual([STAR]);
  expect(view.evening).toEqual([]);
  expect(Math.min(...view.morning.map(({ from }) => from))).toBe(7 * 60 + 10);
  expect(view.troubles).toEqual([]);
  const late = await mise(context, MONDAY, "07:45");
  expect(late.troubles[0]).toMatch(/^\d+ minutes late: even the quickest order ends after/);
  expect(late.planB.length).toBe(1);
});

test("in the evening, what is left of it is planned from now on", async () => {
  const view = await mise(await twoDays(), MONDAY, "20:10");
  expect(view.evening.length).toBeGreaterThan(0);
  expect(view.evening[0]?.starts).toBe("20:10");
});

test("another lunch changes nothing, another item leaves what was ticked ticked", async () => {
  const context = await twoDays();
  await tick(context, STAR, 3);
  const before = await mise(context);
  await compose(context, addDays(MONDAY, 1), [item("banana")]);
  expect(await mise(context)).toEqual(before);
  await compose(context, MONDAY, [item("cucumber-slices", ["star-cutter"]), item("banana")]);
  expect(stepOf(await mise(context), STAR)?.tick).toMatchObject({ minutes: 3 });
});

test("a step that is no longer there is refused and nothing is written", async () => {
  const context = await twoDays();
  const gone = await tick(context, "porridge/Stir", 3);
  expect(gone).toEqual({ ok: false, problem: { kind: "step-gone" } });
  const input = { lunchId: "none", stepKey: STAR, isDone: true, minutes: 2 };
  expect(await tickPrepStep(context, input)).toEqual({
    ...{ ok: false, problem: { kind: "lunch-gone" } },
  });
  expect(await context.db.stepTick.count()).toBe(0);
  expect(await context.db.prepTiming.count()).toBe(0);
});

test.each([-1, 1441, Number.NaN])("%s minutes are told beside the field", (minutes) => {
  const input = { lunchId: "x", stepKey: "y", isDone: true, minutes };
  expect(TickStepInput.safeParse(input).error?.issues[0]?.path).toEqual(["minutes"]);
});

test("no oven, a short morning and a bedtime past midnight are dealt with", async () => {
  const context = await twoDays();
  await writeSettings(context.db, {
    ...{ appliances: { hob: 0 }, bedtime: clock("00:30"), morningFrom: clock("07:40") },
  });
  const { troubles, evening } = await mise(context);
  expect(troubles).toContain("A step needs the hob, and the series bible says there is none.");
  expect(troubles[0]).toMatch(/before the kitchen opens at 07:40/);
  expect(evening.length).toBeGreaterThan(0);
});

test("the room opens on the first lunch whose lid is not shut", async () => {
  const context = await twoDays();
  expect(await findNextLunch(context)).toBe(MONDAY);
  await packLunch(context, { lunchId: (await mise(context)).lunchId, minutes: null });
  expect(await findNextLunch(context)).toBe(addDays(MONDAY, 1));
  expect(await loadMise(context, day("2026-03-14"), ZONE)).toBeUndefined();
});
