import { expect, test } from "vitest";
import { addDays, day, mondayOf, type Day } from "#lib/calendar/index.ts";
import { readEpisodes } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { proposeMonth } from "#tests/support/propose-month.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONTH = day("2026-04-01");

async function startedContext(): Promise<Context> {
  const context = testContext("2026-03-20");
  const child = { privateName: "Tomas", onScreenName: "Pepper" };
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [child] }));
  return context;
}

/** One packed lunch, with the quarters eaten of each food. */
async function judge(
  context: Context,
  date: Day,
  verdicts: Readonly<Record<string, number>>,
): Promise<void> {
  const { db, now } = context;
  const child = await db.child.findFirstOrThrow();
  const weekOf = mondayOf(date);
  const number = await db.episode.count();
  const episode = await db.episode.upsert({
    where: { weekOf },
    create: { weekOf, number },
    update: {},
  });
  const lunch = await db.lunch.create({ data: { episodeId: episode.id, date, packedAt: now } });
  for (const [foodId, eaten] of Object.entries(verdicts)) {
    await db.lunchItem.create({
      data: {
        ...{ lunchId: lunch.id, foodId, part: "extra", amount: 60, fate: "packed" },
        reactions: { create: { childId: child.id, eaten, face: eaten * 25, loggedAt: now } },
      },
    });
  }
}

async function proposedFoods(context: Context): Promise<string[]> {
  expect(await proposeMonth(context, { month: MONTH })).toMatchObject({ ok: true });
  const episodes = await readEpisodes(context.db, MONTH, addDays(MONTH, 30));
  return episodes.flatMap(({ lunches }) =>
    lunches.flatMap(({ items }) => items.map(({ food }) => food.id)),
  );
}

test("foods that a child refused again and again are proposed less than before", async () => {
  const before = await proposedFoods(await startedContext());
  const refused = [...new Set(before)].slice(0, 12);
  const context = await startedContext();
  // On a full day nothing is learned about a food, so something else was eaten up beside it.
  const liked = (await context.db.food.findMany({ where: { isStaple: false }, take: 60 }))
    .map(({ id }) => id)
    .filter((id) => !before.includes(id));
  for (let turn = 0; turn < 4; turn += 1)
    for (const [index, food] of refused.entries()) {
      const date = addDays(day("2025-10-06"), turn * 12 + index);
      const others = liked.slice((index % 5) * 4, (index % 5) * 4 + 4);
      await judge(context, date, {
        ...Object.fromEntries(others.map((id) => [id, 4])),
        [food]: 0,
      });
    }
  const after = await proposedFoods(context);
  const count = (foods: readonly string[]): number =>
    foods.filter((food) => refused.includes(food)).length;
  expect(count(before)).toBeGreaterThanOrEqual(12);
  expect(count(after)).toBeLessThan(count(before) / 2);
});

test("a food refused this week is out until its date and named with it; then it may return", async () => {
  const context = await startedContext();
  await judge(context, day("2026-03-18"), { "carrot-sticks": 0 });
  const mondays = [day("2026-03-23"), day("2026-03-30")];
  const problem = await planProblemFor(context.db, mondays, context.today);
  const [resting] = problem.forbidden.filter(({ kind }) => kind === "resting");
  expect(resting?.name).toBe("carrot sticks: resting for Pepper until Wed 1 April");
  expect(resting?.on).toEqual(
    ["23", "24", "25", "26", "27", "30", "31"].map((date) => `2026-03-${date}`),
  );
  const later = await planProblemFor(context.db, [day("2026-04-13")], context.today);
  expect(later.forbidden.filter(({ kind }) => kind === "resting")).toEqual([]);
});
