import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { loadClosestWeeks } from "#lib/use-cases/load-closest-weeks.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONDAY = day("2026-03-02");

test("a week names its three closest earlier weeks, closest first, each with what they share", async () => {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  const weeks = await loadClosestWeeks(context, MONDAY);
  expect(weeks).toHaveLength(3);
  expect(weeks.every(({ monday }) => monday < MONDAY)).toBe(true);
  const percents = weeks.map(({ sentence }) => Number(/^(\d+) %/.exec(sentence)?.[1]));
  expect(percents).toEqual([...percents].sort((left, right) => right - left));
  for (const { sentence } of weeks) expect(sentence).toMatch(/^\d+ % like the week of .+ \d{4}: ./);
  expect(weeks.map(({ sentence }) => sentence).join(" ")).not.toMatch(/motif:|theme:/);
});

test("a copy of a week is its closest, at 100 %, as soon as it stands", async () => {
  const context = testContext();
  const { db } = context;
  for (const weekOf of ["2026-02-02", "2026-02-09", "2026-03-02"]) {
    const foods = weekOf === "2026-02-09" ? ["hummus", "apple"] : ["gouda", "pear"];
    await db.episode.create({
      data: {
        ...{ number: 1, weekOf, workingTitle: `week ${weekOf}` },
        lunches: {
          create: {
            date: weekOf,
            items: {
              create: foods.map((foodId) => ({ foodId, part: "extra", amount: 1, unit: "g" })),
            },
          },
        },
      },
    });
    if (weekOf === "2026-02-09") expect(await loadClosestWeeks(context, MONDAY)).toEqual([]);
  }
  const [first, ...others] = await loadClosestWeeks(context, MONDAY);
  expect(first).toMatchObject({ monday: "2026-02-02", title: "week 2026-02-02" });
  expect(first?.sentence).toMatch(/^100 % like .*: (gouda|pear)/i);
  expect(others).toEqual([]);
});
