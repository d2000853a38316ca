import { expect, test } from "vitest";
import {
  addDays,
  day,
  daysBetween,
  mondayOf,
  overlapsSeason,
  SeasonWindow,
  weeksLater,
} from "#lib/calendar/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadYear } from "#lib/use-cases/load-year.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

test("the year shows what is planned, what was on a year before, and themes in season and at rest", async () => {
  const context = testContext("2026-03-11");
  await loadDemo(context, tinHarbour, referenceThemes());
  const year = await loadYear(context);
  expect(year.map(({ monday }) => monday)).toEqual(
    Array.from({ length: 52 }, (_, week) => weeksLater(mondayOf(context.today), week)),
  );
  const episodes = await context.db.episode.findMany({ include: { theme: true } });
  const shown = episodes.flatMap(({ themeId, weekOf }) =>
    themeId ? [{ themeId, on: day(weekOf) }] : [],
  );
  const themes = new Map((await context.db.theme.findMany()).map((theme) => [theme.id, theme]));
  let toCome = 0;
  for (const { monday, planned, before, ...week } of year) {
    const episode = episodes.find(({ weekOf }) => weekOf === monday);
    expect(planned?.title).toBe(episode?.theme?.name);
    const past = episodes.find(({ weekOf }) => weekOf === weeksLater(monday, -52));
    expect(before[0]?.title).toBe(past?.theme?.name);
    if (!week.toCome) continue;
    toCome += 1;
    expect(planned).toBeUndefined();
    const theme = themes.get(week.toCome.id);
    const season = SeasonWindow.parse(JSON.parse(theme?.seasonJson ?? ""));
    expect(overlapsSeason(season, monday, addDays(monday, 6))).toBe(true);
    const same = shown.filter(({ themeId }) => themeId === theme?.id);
    for (const { on } of same) {
      // The series' rest for themes is the settings' own default: 180 days.
      expect(Math.abs(daysBetween(on, monday))).toBeGreaterThanOrEqual(theme?.restDays ?? 180);
    }
    shown.push({ themeId: week.toCome.id, on: monday });
  }
  expect(toCome).toBeGreaterThan(30);
  // Easter 2026 is on 5 April (from memory); the demo's lunches pass a round number within the year.
  expect(year.find(({ monday }) => monday === "2026-03-30")?.moments).toContain(
    "Easter is on Sun 5 April",
  );
  expect(year.some(({ moments }) => moments.some((words) => /^Lunch \d+00 of/.test(words)))).toBe(
    true,
  );
});

test("a week that is off asks for no theme, and an empty series has nothing before", async () => {
  const context = testContext("2026-03-11");
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [] }));
  await context.db.dayOff.create({
    data: { from: "2026-04-06", to: "2026-04-10", label: "Easter break" },
  });
  const year = await loadYear(context);
  expect(year.every(({ before, planned }) => before.length === 0 && !planned)).toBe(true);
  const off = year.find(({ monday }) => monday === "2026-04-06");
  expect(off).toMatchObject({ isOff: true, toCome: null, offLabels: ["Easter break"] });
  expect(year.filter(({ toCome }) => toCome === null).map(({ monday }) => monday)).toEqual([
    "2026-04-06",
  ]);
});
