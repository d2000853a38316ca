import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readSchoolRules, readSettings, readShops } from "#lib/db/index.ts";
import { shootDays } from "#lib/use-cases/pencil-week.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { testContext } from "../support/test-context.ts";

const child = { privateName: "Private One", onScreenName: "Pip", allergens: ["milk"] };

test("a series, its children and their allergens are written together", async () => {
  const context = testContext();
  const input = StartSeriesInput.parse({ name: "🍱 سلسلة", departure: "07:40", children: [child] });
  expect((await startSeries(context, input)).ok).toBe(true);
  expect(await context.db.series.findFirst()).toMatchObject({ name: "🍱 سلسلة", isDemo: false });
  expect(await context.db.avoidance.findMany()).toMatchObject([
    { allergen: "milk", severity: "allergy" },
  ]);
  const settings = await readSettings(context.db);
  expect(settings).toMatchObject({ departure: "07:40", privateWords: ["Private One"] });
});

test("a second start is refused and changes nothing", async () => {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "First" }));
  const again = await startSeries(
    context,
    StartSeriesInput.parse({ name: "Second", children: [child] }),
  );
  expect(again.ok).toBe(false);
  expect(await context.db.series.findFirst()).toMatchObject({ name: "First" });
  expect(await context.db.child.count()).toBe(0);
});

test("a start that fails half way writes nothing", async () => {
  const context = testContext();
  const input = StartSeriesInput.parse({ name: "Half", children: [child] });
  const broken = { ...input, departure: "no time" as never };
  await expect(startSeries(context, broken)).rejects.toThrow();
  expect(await context.db.series.count()).toBe(0);
  expect(await context.db.child.count()).toBe(0);
});

test.each([
  ["no name", { name: "  " }, "name"],
  ["a 10,000-character name", { name: "x".repeat(10_000) }, "name"],
  ["a time that is none", { name: "A", departure: "25:99" }, "departure"],
  [
    "a month that is none",
    { name: "A", children: [{ ...child, birthMonth: "2019-13" }] },
    "children.0.birthMonth",
  ],
  [
    "a private name on screen",
    { name: "A", children: [{ ...child, onScreenName: "private one" }] },
    "children.0.onScreenName",
  ],
])("%s is refused at its field", (_, input, field) => {
  const parsed = StartSeriesInput.safeParse(input);
  expect(parsed.error?.issues.map((problem) => problem.path.join("."))).toContain(field);
});

test("rules, shops, school days and days off given at the start stand in the bible", async () => {
  const context = testContext();
  const input = StartSeriesInput.parse({
    ...{ name: "A", children: [child], ruleStarts: ["fizzy", "nuts", "no-such"] },
    shops: [
      { name: "Near", days: ["6"] },
      { name: "Far", days: [] },
    ],
    schoolDays: ["1", "3"],
    daysOff: [{ from: "2026-03-16", to: "", label: "Fair" }],
  });
  expect((await startSeries(context, input)).ok).toBe(true);
  const rules = (await readSchoolRules(context.db)).map(({ rule }) => rule.name);
  expect(rules).toEqual(["No nuts", "No fizzy drinks"]);
  const shops = (await readShops(context.db)).map(({ name, days }) => [name, days]);
  expect(shops).toEqual([
    ["Near", [6]],
    ["Far", []],
  ]);
  expect(await shootDays(context.db, day("2026-03-16"))).toEqual(["2026-03-18"]);
});
