import { expect, test } from "vitest";
import { mondayOf } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadVerdictDay } from "#lib/use-cases/load-verdict-day.ts";
import { SaveDayFactsInput } from "#lib/use-cases/save-day-facts.input.ts";
import { describeFactsProblem, saveDayFacts } from "#lib/use-cases/save-day-facts.ts";
import { testContext } from "#tests/support/test-context.ts";

const TYPED = { minutes: 21.5, hard: "the pear turned brown", pickups: "the lid from above" };

async function filmingDay(): Promise<{ context: Context; lunchId: string }> {
  const context = testContext();
  const episode = await context.db.episode.create({
    data: { number: 1, weekOf: mondayOf(context.today) },
  });
  const lunch = await context.db.lunch.create({
    data: { episodeId: episode.id, date: context.today },
  });
  return { context, lunchId: lunch.id };
}

test("minutes, what was hard and the pick-ups are kept, and shown when the day is opened again", async () => {
  const { context, lunchId } = await filmingDay();
  const before = await loadVerdictDay(context, context.today);
  const input = SaveDayFactsInput.parse({
    ...{ lunchId, revision: before?.facts.revision, ...TYPED },
    hard: `  ${TYPED.hard}\t`,
  });
  expect(await saveDayFacts(context, input)).toEqual({ ok: true, value: { revision: 2 } });
  expect((await loadVerdictDay(context, context.today))?.facts).toEqual({
    ...{ minutesUsed: 21.5, hard: TYPED.hard, pickups: TYPED.pickups, revision: 2 },
  });
});

test("emptied facts are empty, and no minutes are not zero minutes", async () => {
  const { context, lunchId } = await filmingDay();
  await saveDayFacts(context, { lunchId, revision: 1, ...TYPED });
  const none = { minutes: null, hard: "", pickups: "" };
  expect((await saveDayFacts(context, { lunchId, revision: 2, ...none })).ok).toBe(true);
  expect((await loadVerdictDay(context, context.today))?.facts).toMatchObject({
    ...{ minutesUsed: null, hard: "", pickups: "" },
  });
});

test("the second of two tabs is told, and nothing it typed replaces the first", async () => {
  const { context, lunchId } = await filmingDay();
  await saveDayFacts(context, { lunchId, revision: 1, ...TYPED });
  const late = { lunchId, revision: 1, minutes: 3, hard: "nothing", pickups: "" };
  const outcome = await saveDayFacts(context, late);
  expect(outcome).toEqual({ ok: false, problem: { kind: "changed" } });
  expect((await loadVerdictDay(context, context.today))?.facts).toMatchObject({
    ...{ minutesUsed: 21.5, hard: TYPED.hard, revision: 2 },
  });
  expect(describeFactsProblem({ kind: "changed" })).toContain("changed elsewhere");
});

test("two tabs that save at the same moment: one is kept, one is told", async () => {
  const { context, lunchId } = await filmingDay();
  const outcomes = await Promise.all(
    ["one", "two"].map((hard) => saveDayFacts(context, { lunchId, revision: 1, ...TYPED, hard })),
  );
  expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
  const kept = outcomes[0]?.ok ? "one" : "two";
  expect(await context.db.lunch.findFirst()).toMatchObject({ hard: kept, revision: 2 });
});

test("facts of a lunch that was removed are refused", async () => {
  const { context } = await filmingDay();
  const outcome = await saveDayFacts(context, { lunchId: "none", revision: 1, ...TYPED });
  expect(outcome).toEqual({ ok: false, problem: { kind: "gone" } });
});

test.each([
  ["minutes that are no number", { minutes: NaN }, "minutes", "Write the minutes as a number."],
  ["minutes as words", { minutes: "twenty" }, "minutes", "Write the minutes as a number."],
  ["minutes below zero", { minutes: -1 }, "minutes", "Minutes cannot be below zero."],
  ["minutes of a whole day", { minutes: 601 }, "minutes", "That is more than a morning."],
  ["1,001 letters", { hard: "x".repeat(1001) }, "hard", "Keep this under 1,000 letters."],
  ["10,000 letters", { pickups: "é".repeat(10_000) }, "pickups", "Keep this under 1,000 letters."],
])("%s are told at their field", (_, change, field, message) => {
  const parsed = SaveDayFactsInput.safeParse({ lunchId: "l", revision: 1, ...TYPED, ...change });
  const told = parsed.error?.issues.map((issue) => [issue.path.join("."), issue.message]);
  expect(told).toEqual([[field, message]]);
});
