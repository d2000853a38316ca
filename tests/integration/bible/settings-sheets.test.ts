import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readSettings } from "#lib/db/index.ts";
import { loadBible } from "#lib/use-cases/bible/load-bible.ts";
import {
  loadDaysSheet,
  loadLimitsSheet,
  loadPublicSheet,
  loadSeriesSheet,
  saveDaysSheet,
  saveLimitsSheet,
  savePublicSheet,
  saveSeriesSheet,
} from "#lib/use-cases/bible/settings-sheets.ts";
import {
  DaysInput,
  LimitsInput,
  PublicInput,
  SeriesInput,
} from "#lib/use-cases/bible/settings-sheets.input.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { shootDays } from "#lib/use-cases/pencil-week.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const CHILD = { privateName: "Ines", onScreenName: "Biscuit" };
const ELSEWHERE = { ok: false, problem: { kind: "changed-elsewhere" } };

async function started(): Promise<Context> {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "A", children: [CHILD] }));
  return context;
}

test("every sheet can be saved as it opened, and is then the same", async () => {
  const context = await started();
  const [series, days, limits, open] = [
    await loadSeriesSheet(context),
    await loadDaysSheet(context),
    await loadLimitsSheet(context),
    await loadPublicSheet(context),
  ];
  expect((await saveSeriesSheet(context, SeriesInput.parse(series))).ok).toBe(true);
  expect((await saveDaysSheet(context, DaysInput.parse(days))).ok).toBe(true);
  expect((await saveLimitsSheet(context, LimitsInput.parse(limits))).ok).toBe(true);
  expect((await savePublicSheet(context, PublicInput.parse(open))).ok).toBe(true);
  expect(await loadSeriesSheet(context)).toEqual(series);
  expect(await loadDaysSheet(context)).toEqual(days);
  expect(await loadLimitsSheet(context)).toEqual(limits);
  expect(await loadPublicSheet(context)).toEqual(open);
});

test("the series sheet is read back as saved; before a series there is none", async () => {
  const context = await started();
  const sheet = await loadSeriesSheet(context);
  const typed = { ...sheet, name: "B", signOn: "Lids up!", housePhrases: "one\n\n two \none" };
  expect((await saveSeriesSheet(context, SeriesInput.parse(typed))).ok).toBe(true);
  expect(await loadBible(context)).toMatchObject({
    name: "B",
    settings: { signOn: "Lids up!", housePhrases: ["one", "two"] },
  });
  expect(await saveSeriesSheet(context, SeriesInput.parse(typed))).toEqual(ELSEWHERE);
  const bare = testContext();
  expect(await loadSeriesSheet(bare)).toBeUndefined();
  expect(await loadBible(bare)).toBeUndefined();
  expect((await saveSeriesSheet(bare, SeriesInput.parse(typed))).ok).toBe(false);
});

test("school days and days off decide which days a week is shot on", async () => {
  const context = await started();
  const opened = await loadDaysSheet(context);
  const typed = {
    ...{ ...opened, schoolDays: ["1", "2", "4"], timeZone: " Europe/Oslo " },
    daysOff: [
      { from: "2026-03-17", to: "", label: "Boat blessing" },
      { from: "2026-03-24", to: "2026-04-02", label: "Spring break" },
    ],
  };
  expect((await saveDaysSheet(context, DaysInput.parse(typed))).ok).toBe(true);
  expect(await shootDays(context.db, day("2026-03-16"))).toEqual(["2026-03-16", "2026-03-19"]);
  expect(await shootDays(context.db, day("2026-03-23"))).toEqual(["2026-03-23"]);
  expect((await loadBible(context))?.daysOff).toHaveLength(2);
  expect((await readSettings(context.db)).timeZone).toBe("Europe/Oslo");
  expect(await loadDaysSheet(context)).toMatchObject({ timeZone: "Europe/Oslo" });
  expect(await saveDaysSheet(context, DaysInput.parse(typed))).toEqual(ELSEWHERE);
});

test("the limits reach the planner's question", async () => {
  const context = await started();
  const opened = await loadLimitsSheet(context);
  expect(opened.weekBudget).toBe("");
  const typed = {
    ...{ ...opened, morningMinutes: 12, weekBudget: "45,5", newFoodsPerLunchMax: 0 },
    ...{ newFoodsPerWeekMax: 3 },
  };
  expect((await saveLimitsSheet(context, LimitsInput.parse(typed))).ok).toBe(true);
  const problem = await planProblemFor(context.db, [day("2026-03-16")]);
  expect(problem.newFoods).toMatchObject({ perLunchMax: 0, perWeekMax: 3 });
  expect(problem.weeks[0]).toMatchObject({ budgetCents: 4550 });
  expect(problem.weeks[0]?.days[0]?.minutesMax).toBe(12);
  expect((await loadLimitsSheet(context)).weekBudget).toBe("45.50");
});

test("private names stay among the private words, and an on-screen name cannot be one", async () => {
  const context = await started();
  const opened = await loadPublicSheet(context);
  const save = (privateWords: string) =>
    savePublicSheet(context, PublicInput.parse({ ...opened, privateWords }));
  expect(await save("Quay Lane School\nbiscuit")).toEqual({
    ok: false,
    problem: { kind: "word-on-screen", field: "privateWords" },
  });
  expect((await save("Quay Lane School")).ok).toBe(true);
  expect((await readSettings(context.db)).privateWords).toEqual(["Ines", "Quay Lane School"]);
});

test.each([
  ["no school day", DaysInput, { schoolDays: [] }, "schoolDays"],
  [
    "an end before the start",
    DaysInput,
    { daysOff: [{ from: "2026-03-12", to: "2026-03-11", label: "x" }] },
    "daysOff.0.to",
  ],
  [
    "a nameless day off",
    DaysInput,
    { daysOff: [{ from: "2026-03-12", to: "", label: " " }] },
    "daysOff.0.label",
  ],
  ["a zone of nowhere", DaysInput, { timeZone: "Mars/Olympus" }, "timeZone"],
  ["an offset for a zone", DaysInput, { timeZone: "+02:00" }, "timeZone"],
  ["a budget in words", LimitsInput, { weekBudget: "a lot" }, "weekBudget"],
  ["a negative budget", LimitsInput, { weekBudget: "-4" }, "weekBudget"],
  ["no cook", LimitsInput, { cooks: 0 }, "cooks"],
  ["an emptied number", LimitsInput, { morningMinutes: Number.NaN }, "morningMinutes"],
  ["a long phrase", SeriesInput, { housePhrases: "x".repeat(201) }, "housePhrases"],
  ["a rate below zero", SeriesInput, { wordsPerMinute: -1 }, "wordsPerMinute"],
  ["a long note", PublicInput, { lawNote: "x".repeat(4001) }, "lawNote"],
])("%s is told at its field", async (_, schema, change, field) => {
  const context = await started();
  const sheets = {
    ...(await loadSeriesSheet(context)),
    ...(await loadDaysSheet(context)),
    ...(await loadLimitsSheet(context)),
    ...(await loadPublicSheet(context)),
  };
  expect(schema.safeParse(sheets).success).toBe(true);
  const parsed = schema.safeParse({ ...sheets, ...change });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual([field]);
});
