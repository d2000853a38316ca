import { expect, test } from "vitest";
import { addDays, day, daysBetween } from "#lib/calendar/index.ts";
import { readEpisodes, readSettings } from "#lib/db/index.ts";
import { proposeMonth } from "#tests/support/propose-month.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const CHILD = { privateName: "Tomas", onScreenName: "Pepper", allergens: ["sesame", "milk"] };

test("a proposed month is full, in season, at rest, and without what a child avoids", async () => {
  const context = testContext("2026-02-20");
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [CHILD] }));
  await context.db.dayOff.create({
    data: { from: "2026-03-12", to: "2026-03-13", label: "Museum days" },
  });
  const month = day("2026-03-01");
  expect(await proposeMonth(context, { month })).toEqual({ ok: true, value: { taken: 4 } });

  const episodes = await readEpisodes(context.db, day("2026-03-01"), day("2026-03-31"));
  const themes = episodes.map((episode) => episode.theme?.id);
  expect(new Set(themes).size).toBe(4);
  const lunches = episodes.flatMap((episode) => episode.lunches);
  expect(lunches).toHaveLength(18);
  const { foodRestDays } = await readSettings(context.db);
  const lastOn = new Map<string, string>();
  for (const lunch of lunches) {
    expect(lunch.items.length).toBeGreaterThanOrEqual(4);
    for (const { food } of lunch.items) {
      const holds = [...food.allergens, ...food.maybeAllergens];
      expect(holds).not.toContain("milk");
      expect(holds).not.toContain("sesame");
      if (food.seasonMonths !== null) expect(food.seasonMonths).toContain(3);
      const before = lastOn.get(food.id);
      if (before !== undefined) {
        expect(daysBetween(day(before), lunch.date)).toBeGreaterThanOrEqual(foodRestDays);
      }
      lastOn.set(food.id, lunch.date);
    }
  }
  const again = await proposeMonth(context, { month });
  expect(again).toEqual({ ok: false, problem: { kind: "nothing-open" } });
});

test("weeks that are over are left alone, and the same day gives the same month", async () => {
  const told: string[][] = [];
  for (let run = 0; run < 2; run += 1) {
    const context = testContext("2026-03-18");
    await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [CHILD] }));
    await proposeMonth(context, { month: day("2026-03-01") });
    const episodes = await readEpisodes(
      context.db,
      addDays(context.today, -30),
      addDays(context.today, 30),
    );
    expect(episodes.map((episode) => episode.weekOf)).toEqual(["2026-03-16", "2026-03-23"]);
    told.push(
      episodes.flatMap((episode) =>
        episode.lunches.flatMap((lunch) =>
          lunch.items.map((item) => `${lunch.date} ${item.food.id}`),
        ),
      ),
    );
  }
  expect(told[0]).toEqual(told[1]);
  expect(told[0]?.length).toBeGreaterThan(39);
});
