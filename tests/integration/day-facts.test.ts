import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { mondayOf } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { describeFactsProblem, keepDayFacts } from "#lib/use-cases/keep-day-facts.ts";
import { KeepDayFactsInput } from "#lib/use-cases/keep-day-facts.input.ts";
import { loadVerdictDay } from "#lib/use-cases/load-verdict-day.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { testContext } from "#tests/support/test-context.ts";

const TYPED = { minutes: 21.5, hard: "the pear turned brown", pickups: "the lid from above" };
type Given = Partial<Omit<KeepDayFactsInput, "change">>;

async function filmingDay(said: object = {}): Promise<{ context: Context; lunchId: string }> {
  const context = testContext();
  const episode = await context.db.episode.create({
    data: { number: 1, weekOf: mondayOf(context.today) },
  });
  const lunch = await context.db.lunch.create({
    data: { episodeId: episode.id, date: context.today, ...said },
  });
  return { context, lunchId: lunch.id };
}

/** An entry of a phone, made at some second of the afternoon. */
function entry(
  lunchId: string,
  second: number,
  change: KeepDayFactsInput["change"],
  given: Given = {},
): KeepDayFactsInput {
  const madeAt = new Date(Date.UTC(2026, 2, 11, 15, 0, second)).toISOString();
  const made = { id: randomUUID(), lunchId, device: "one", baseRevision: 0, madeAt };
  return KeepDayFactsInput.parse({ ...made, change, ...given });
}

async function factsOf(context: Context) {
  return (await loadVerdictDay(context, context.today))?.facts;
}

test("minutes, what was hard and the pick-ups are kept, and shown when the day is opened again", async () => {
  const { context, lunchId } = await filmingDay();
  await keepDayFacts(context, [entry(lunchId, 1, { ...TYPED, hard: `  ${TYPED.hard}\t` })]);
  expect(await factsOf(context)).toEqual({ lunchId, revision: 1, values: TYPED, conflicts: [] });
  expect(await context.db.lunch.findFirst()).toMatchObject({
    ...{ minutesUsed: 21.5, hard: TYPED.hard, pickups: TYPED.pickups },
  });
});

test("emptied facts are empty, and no minutes are not zero minutes", async () => {
  const { context, lunchId } = await filmingDay();
  const none = { minutes: null, hard: "", pickups: "" };
  await keepDayFacts(context, [entry(lunchId, 1, TYPED), entry(lunchId, 2, none)]);
  expect((await factsOf(context))?.values).toEqual(none);
});

test("an entry sent again, or after later ones, changes nothing", async () => {
  const { context, lunchId } = await filmingDay();
  const entries = [
    entry(lunchId, 1, { minutes: 20 }),
    entry(lunchId, 2, { hard: "the rice stuck" }),
    entry(lunchId, 3, { minutes: 25 }),
  ];
  const [first, second, third] = entries;
  if (!first || !second || !third) throw new Error("Three entries were made.");
  for (const batch of [[third], [second, third], [first], entries, [first, first]])
    for (const outcome of await keepDayFacts(context, batch)) expect(outcome.ok).toBe(true);
  expect(await factsOf(context)).toMatchObject({
    ...{ revision: 3, values: { minutes: 25, hard: "the rice stuck" }, conflicts: [] },
  });
  expect(await context.db.dayFactEvent.count()).toBe(3);
});

test("two phones without a line: different fields both stand, the same field is asked about", async () => {
  const { context, lunchId } = await filmingDay();
  await keepDayFacts(context, [entry(lunchId, 1, { minutes: 20, hard: "the lid" })]);
  const two = { device: "two" };
  await keepDayFacts(context, [entry(lunchId, 2, { minutes: 30, pickups: "the tin" }, two)]);
  expect(await factsOf(context)).toMatchObject({
    values: { minutes: 30, hard: "the lid", pickups: "the tin" },
    conflicts: [{ field: "minutes", said: [{ value: 30 }, { value: 20 }] }],
  });
  const choice = entry(lunchId, 3, { minutes: 20 }, { baseRevision: 2 });
  await keepDayFacts(context, [choice]);
  expect(await factsOf(context)).toMatchObject({ values: { minutes: 20 }, conflicts: [] });
});

test("what a day said before its first entry gives way only where it is changed", async () => {
  const { context, lunchId } = await filmingDay({ minutesUsed: 18, hard: "nothing stuck" });
  const before = await factsOf(context);
  expect(before).toMatchObject({ revision: 1, values: { minutes: 18, hard: "nothing stuck" } });
  await keepDayFacts(context, [entry(lunchId, 1, { hard: "" }, { baseRevision: 1 })]);
  expect(await factsOf(context)).toMatchObject({
    ...{ revision: 2, values: { minutes: 18, hard: "" }, conflicts: [] },
  });
});

test("minutes given while the lid is shut stand over earlier ones and are not lost by a later fact", async () => {
  const { context, lunchId } = await filmingDay();
  await context.db.lunchItem.create({
    data: { lunchId, foodId: "apple", part: "fruit", amount: 80 },
  });
  await keepDayFacts(context, [entry(lunchId, 1, { minutes: 20 })]);
  expect((await packLunch(context, { lunchId, minutes: 24 })).ok).toBe(true);
  await keepDayFacts(context, [entry(lunchId, 2, { hard: "the lid" }, { baseRevision: 1 })]);
  expect(await factsOf(context)).toMatchObject({
    ...{ values: { minutes: 24, hard: "the lid" }, conflicts: [] },
  });
});

test("facts of a lunch that was removed are refused, and those beside them are kept", async () => {
  const { context, lunchId } = await filmingDay();
  const outcomes = await keepDayFacts(context, [
    entry("none", 1, { hard: "x" }),
    entry(lunchId, 2, { hard: "y" }),
  ]);
  expect(outcomes).toMatchObject([{ ok: false, problem: { kind: "gone" } }, { ok: true }]);
  expect(describeFactsProblem({ kind: "gone" })).toContain("removed");
});

test.each([
  ["minutes that are no number", { minutes: NaN }, "minutes", "Write the minutes as a number."],
  ["minutes as words", { minutes: "twenty" }, "minutes", "Write the minutes as a number."],
  ["minutes below zero", { minutes: -1 }, "minutes", "Minutes cannot be below zero."],
  ["minutes of a whole day", { minutes: 601 }, "minutes", "That is more than a morning."],
  ["1,001 letters", { hard: "x".repeat(1001) }, "hard", "Keep this under 1,000 letters."],
  ["10,000 letters", { pickups: "é".repeat(10_000) }, "pickups", "Keep this under 1,000 letters."],
])("%s are told at their field", (_, change, field, message) => {
  const parsed = KeepDayFactsInput.safeParse({
    ...{ id: randomUUID(), lunchId: "l", device: "one", baseRevision: 0 },
    ...{ madeAt: "2026-03-11T15:00:00Z", change: { ...TYPED, ...change } },
  });
  const told = parsed.error?.issues.map((issue) => [issue.path.join("."), issue.message]);
  expect(told).toEqual([[`change.${field}`, message]]);
});
