import { expect, test } from "vitest";
import { addDays, day, mondayOf, type Day } from "#lib/calendar/index.ts";
import { readEpisodes, readSettings, writeSettings } from "#lib/db/index.ts";
import type { PlanProblem } from "#lib/planner/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { NO_WISHES, withWishes } from "#lib/use-cases/proposal/desk.ts";
import { openWeeks } from "#lib/use-cases/proposal/open-weeks.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { proposeMonth } from "#tests/support/propose-month.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONTH = day("2026-04-01");
const MONDAY = day("2026-04-20");

async function demo(): Promise<Context> {
  const context = testContext("2026-03-20");
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}
const newIds = ({ items }: PlanProblem): Set<string> =>
  new Set(items.filter(({ isNew }) => isNew).map(({ foodId }) => foodId));

/** Foods that somebody was served or judged before a day, straight from the tables. */
async function servedBefore({ db }: Context, before: Day): Promise<Set<string>> {
  const rows = await db.lunchItem.findMany({
    where: { lunch: { date: { lt: before } }, fate: { not: "scrapped" } },
  });
  return new Set(rows.map(({ foodId }) => foodId));
}

test("a food that no child has met is new, and is new no more after a verdict", async () => {
  const context = await demo();
  const problem = await planProblemFor(context.db, [MONDAY], context.today);
  const unmet = newIds(problem);
  const served = await servedBefore(context, MONDAY);
  expect(unmet.size).toBeGreaterThan(0);
  expect([...unmet].filter((id) => served.has(id))).toEqual([]);
  const [first] = unmet;
  if (first === undefined) return;
  const lunch = await context.db.lunch.findFirstOrThrow({
    where: { packedAt: { not: null } },
    orderBy: { date: "desc" },
  });
  const child = await context.db.child.findFirstOrThrow();
  const { id: itemId } = await context.db.lunchItem.create({
    data: { lunchId: lunch.id, foodId: first, part: "extra", amount: 20, fate: "packed" },
  });
  await context.db.reaction.create({
    data: { itemId, childId: child.id, eaten: 0, loggedAt: context.now },
  });
  const after = newIds(await planProblemFor(context.db, [MONDAY], context.today));
  expect(after.has(first)).toBe(false);
});

test("a proposed week brings one new food at least and never more than the limits allow", async () => {
  const context = await demo();
  await writeSettings(context.db, { newFoodsPerLunchMax: 1, newFoodsPerWeekMax: 2 });
  const mondays = await openWeeks(context, MONTH);
  expect(mondays.length).toBeGreaterThan(0);
  const fresh = newIds(await planProblemFor(context.db, mondays, context.today));
  expect(await proposeMonth(context, { month: MONTH })).toMatchObject({ ok: true });
  const episodes = await readEpisodes(context.db, MONTH, addDays(MONTH, 30));
  const proposed = episodes.filter(({ weekOf }) => mondays.includes(weekOf));
  expect(proposed).toHaveLength(mondays.length);
  for (const { lunches } of proposed) {
    const counts = lunches.map(
      ({ items }) => items.filter(({ food }) => fresh.has(food.id)).length,
    );
    const all = counts.reduce((sum, count) => sum + count, 0);
    expect(Math.max(...counts)).toBeLessThanOrEqual(1);
    expect(all).toBeGreaterThanOrEqual(1);
    expect(all).toBeLessThanOrEqual(2);
  }
});

test("no new food is asked for when discoveries are not wanted, not allowed, or a week is held", async () => {
  const context = await demo();
  const ask = () => planProblemFor(context.db, [MONDAY], context.today);
  const least = async () => (await ask()).newFoods.perWeekMin;
  expect((await readSettings(context.db)).wantsDiscoveries).toBe(true);
  const problem = await ask();
  expect(problem.newFoods.perWeekMin).toBe(1);
  const [item] = problem.items;
  const days = problem.weeks.flatMap((week) => week.days);
  const locks = days.map(({ date }) => ({ date, itemId: item?.id ?? "" }));
  const minOf = (some: typeof locks) =>
    withWishes(problem, { ...NO_WISHES, locks: some }).newFoods.perWeekMin;
  expect([minOf(locks.slice(1)), minOf(locks)]).toEqual([1, 0]);
  await writeSettings(context.db, { wantsDiscoveries: false });
  expect(await least()).toBe(0);
  await writeSettings(context.db, { wantsDiscoveries: true, newFoodsPerLunchMax: 0 });
  expect(await least()).toBe(0);
});

test("a series that has just begun knows no main, so none of them counts as new", async () => {
  const context = testContext("2026-03-20");
  const child = { privateName: "Tomas", onScreenName: "Pepper" };
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [child] }));
  const { items } = await planProblemFor(context.db, [mondayOf(MONDAY)], context.today);
  expect(items.filter(({ part, isNew }) => part === "main" && isNew)).toEqual([]);
});
