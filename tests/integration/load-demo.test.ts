import { expect, test } from "vitest";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadSlate } from "#lib/use-cases/load-slate.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

test("the demo fills a year, and leaving it keeps the Larder and nothing else", async () => {
  const context = testContext();
  const foods = await context.db.food.count();
  expect(await loadDemo(context, tinHarbour, referenceThemes())).toMatchObject({ ok: true });
  expect(await context.db.series.findFirst()).toMatchObject({ name: "Tin Harbour", isDemo: true });
  expect(await context.db.lunch.count()).toBeGreaterThan(200);
  expect(await context.db.reaction.count()).toBeGreaterThan(2000);
  const slate = await loadSlate(context, context.today);
  expect(slate.weeks.flatMap((week) => week.episode ?? [])).toHaveLength(4);
  expect(await context.db.$queryRawUnsafe("PRAGMA foreign_key_check")).toEqual([]);

  await context.db.food.update({ where: { id: "apple" }, data: { name: "our apples" } });
  await startSeries(context, StartSeriesInput.parse({ name: "Mine" }));
  expect(await context.db.series.findFirst()).toMatchObject({ name: "Mine", isDemo: false });
  expect(await context.db.episode.count()).toBe(0);
  expect(await context.db.child.count()).toBe(0);
  expect(await context.db.food.count()).toBe(foods);
  expect(await context.db.food.findUnique({ where: { id: "apple" } })).toMatchObject({
    name: "our apples",
  });
});

test("the demo is not loaded over a series of the user's own", async () => {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "Mine" }));
  const outcome = await loadDemo(context, tinHarbour, referenceThemes());
  expect(outcome).toEqual({ ok: false, problem: { kind: "own-series" } });
  expect(await context.db.series.findFirst()).toMatchObject({ name: "Mine" });
});
