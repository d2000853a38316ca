import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { logReaction } from "#lib/use-cases/log-reaction.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { PencilWeekInput } from "#lib/use-cases/pencil-week.input.ts";
import { saveLunch } from "#lib/use-cases/save-lunch.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { swapItem } from "#lib/use-cases/swap-item.ts";
import { testContext } from "#tests/support/test-context.ts";

const MONDAY = day("2026-03-09");
const item = (foodId: string) => ({
  foodId,
  part: "fruit" as const,
  amount: 80,
  unit: "g",
  id: "",
  shopId: "",
  trickIds: [],
  shares: [],
});

/** A pencilled week whose Monday holds an apple and a banana, and one child. */
async function pencilled(): Promise<{ context: Context; lunchId: string; childId: string }> {
  const context = testContext("2026-03-09");
  await startSeries(
    context,
    StartSeriesInput.parse({
      name: "Boxes",
      children: [{ privateName: "Ines", onScreenName: "Biscuit" }],
    }),
  );
  await pencilWeek(context, PencilWeekInput.parse({ monday: MONDAY, title: "Night Train" }));
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date: MONDAY } });
  await saveLunch(context, {
    lunchId: lunch.id,
    revision: 1,
    angle: "Platform one",
    items: [item("apple"), item("banana")],
  });
  const child = await context.db.child.findFirstOrThrow();
  return { context, lunchId: lunch.id, childId: child.id };
}

test("a second series is refused and nothing of it is written", async () => {
  const { context } = await pencilled();
  const outcome = await startSeries(context, StartSeriesInput.parse({ name: "Another" }));
  expect(outcome).toEqual({ ok: false, problem: { kind: "already-started" } });
  expect(await context.db.series.count()).toBe(1);
  expect(await context.db.child.count()).toBe(1);
});

test.each([
  ["a name of 10,000 letters", { name: "x".repeat(10_000) }, "name"],
  ["no name", { name: "   " }, "name"],
  ["a month that is none", child({ birthMonth: "2019-13" }), "children.0.birthMonth"],
  ["a private name on screen", child({ onScreenName: "ines" }), "children.0.onScreenName"],
])("%s is told at its field", (_, input, field) => {
  const parsed = StartSeriesInput.safeParse(input);
  expect(parsed.error?.issues.map((issue) => issue.path.join("."))).toContain(field);
});

test.each(["🍱 Dosen", "صندوق الغداء", "a\u0301 la carte"])(
  "the name %s is kept as typed",
  async (name) => {
    const context = testContext();
    await startSeries(context, StartSeriesInput.parse({ name }));
    expect(await context.db.series.findFirst()).toMatchObject({ name });
  },
);

test("days off get no lunch, and a taken week is refused", async () => {
  const context = testContext();
  await context.db.dayOff.create({
    data: { from: "2026-03-12", to: "2026-03-20", label: "Spring break" },
  });
  await pencilWeek(context, PencilWeekInput.parse({ monday: MONDAY }));
  const dates = (await context.db.lunch.findMany({ orderBy: { date: "asc" } })).map(
    ({ date }) => date,
  );
  expect(dates).toEqual(["2026-03-09", "2026-03-10", "2026-03-11"]);
  const again = await pencilWeek(context, PencilWeekInput.parse({ monday: MONDAY }));
  expect(again).toEqual({ ok: false, problem: { kind: "week-taken" } });
});

test("a week that is pencilled in between moves the numbers behind it up by one", async () => {
  const context = testContext();
  for (const monday of ["2026-03-09", "2026-03-23", "2026-03-16"]) {
    await pencilWeek(context, PencilWeekInput.parse({ monday }));
  }
  const rows = await context.db.episode.findMany({ orderBy: { weekOf: "asc" } });
  expect(rows.map(({ weekOf, number }) => [weekOf, number])).toEqual([
    ["2026-03-09", 1],
    ["2026-03-16", 2],
    ["2026-03-23", 3],
  ]);
});

test("the second of two tabs is told, and nothing it typed replaces the first", async () => {
  const { context, lunchId } = await pencilled();
  const late = await saveLunch(context, { lunchId, revision: 1, angle: "Late", items: [] });
  expect(late).toEqual({ ok: false, problem: { kind: "changed-elsewhere" } });
  expect(await context.db.lunchItem.count({ where: { lunchId } })).toBe(2);
});

test("an unknown food leaves the lunch as it was", async () => {
  const { context, lunchId } = await pencilled();
  const outcome = await saveLunch(context, {
    lunchId,
    revision: 2,
    angle: "",
    items: [item("no-such-food")],
  });
  expect(outcome).toEqual({ ok: false, problem: { kind: "row-gone" } });
  expect(await context.db.lunch.findUnique({ where: { id: lunchId } })).toMatchObject({
    angle: "Platform one",
  });
});

test("a swap keeps the scrapped item on record and a packed lunch is not composed anew", async () => {
  const { context, lunchId } = await pencilled();
  const apple = await context.db.lunchItem.findFirstOrThrow({
    where: { lunchId, foodId: "apple" },
  });
  await swapItem(context, { itemId: apple.id, foodId: "pear", reason: "bruised" });
  await packLunch(context, { lunchId, minutes: 21 });
  const fates = await context.db.lunchItem.findMany({
    where: { lunchId },
    orderBy: { foodId: "asc" },
  });
  expect(fates.map(({ foodId, fate }) => [foodId, fate])).toEqual([
    ["apple", "scrapped"],
    ["banana", "packed"],
    ["pear", "stepped-in"],
  ]);
  const outcome = await saveLunch(context, { lunchId, revision: 4, angle: "", items: [] });
  expect(outcome).toEqual({ ok: false, problem: { kind: "packed" } });
});

test("an entry sent three times counts once, and a clash of two phones keeps both values", async () => {
  const { context, lunchId, childId } = await pencilled();
  const { id: itemId } = await context.db.lunchItem.findFirstOrThrow({ where: { lunchId } });
  const entry = {
    id: randomUUID(),
    itemId,
    childId,
    device: "one",
    baseRevision: 0,
    madeAt: "2026-03-09T15:00:00Z",
    change: { eaten: 3 },
  };
  for (let sent = 0; sent < 3; sent += 1) await logReaction(context, entry);
  expect(await context.db.reactionEvent.count()).toBe(1);
  expect(await context.db.reaction.findFirst()).toMatchObject({ eaten: 3, revision: 1 });

  const other = { ...entry, id: randomUUID(), device: "two", change: { eaten: 1 } };
  const clash = await logReaction(context, { ...other, madeAt: "2026-03-09T14:00:00Z" });
  const said = [
    { value: 3, device: "one", madeAt: "2026-03-09T15:00:00.000Z" },
    { value: 1, device: "two", madeAt: "2026-03-09T14:00:00.000Z" },
  ];
  expect(clash).toMatchObject({ value: { conflicts: [{ field: "eaten", said }], revision: 2 } });
  const held = await context.db.reaction.findFirstOrThrow();
  expect(held.eaten).toBe(3);
  expect(JSON.parse(held.conflictJson ?? "[]")).toEqual([{ field: "eaten", said }]);
  await logReaction(context, {
    ...{ ...other, id: randomUUID(), baseRevision: held.revision },
    ...{ madeAt: "2026-03-09T14:01:00Z", change: { eaten: 1, face: 75 } },
  });
  const chosen = await context.db.reaction.findFirst();
  expect(chosen).toMatchObject({ eaten: 1, face: 75, conflictJson: null });
});

test("a verdict that came without an entry keeps what it said before in the history", async () => {
  const { context, lunchId, childId } = await pencilled();
  const { id: itemId } = await context.db.lunchItem.findFirstOrThrow({ where: { lunchId } });
  const loggedAt = new Date("2026-03-09T15:00:00Z");
  await context.db.reaction.create({
    data: { itemId, childId, eaten: 2, quote: "crunchy", loggedAt },
  });
  const late = {
    ...{ id: randomUUID(), itemId, childId, device: "one", baseRevision: 1 },
    ...{ madeAt: "2026-03-09T16:00:00Z", change: { eaten: 4, note: "ate it after school" } },
  };
  await logReaction(context, late);
  expect(await context.db.reaction.findFirst()).toMatchObject({
    ...{ eaten: 4, quote: "crunchy", note: "ate it after school" },
    ...{ revision: 2, conflictJson: null },
  });
  const events = await context.db.reactionEvent.findMany({ orderBy: { madeAt: "asc" } });
  expect(events.map(({ changeJson }) => JSON.parse(changeJson) as unknown)).toEqual([
    { eaten: 2, quote: "crunchy" },
    { eaten: 4, note: "ate it after school" },
  ]);
  await logReaction(context, {
    ...{ ...late, id: randomUUID(), baseRevision: 2 },
    ...{ madeAt: "2026-03-09T16:05:00Z", change: { face: 100 } },
  });
  expect(await context.db.reaction.findFirst()).toMatchObject({ eaten: 4, face: 100, revision: 3 });
});

function child(part: Record<string, string>): unknown {
  return { name: "Boxes", children: [{ privateName: "Ines", onScreenName: "Biscuit", ...part }] };
}
