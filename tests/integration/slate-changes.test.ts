import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { editEpisode, moveEpisode, removeEpisode } from "#lib/use-cases/edit-episode.ts";
import { packLunch } from "#lib/use-cases/pack-lunch.ts";
import { pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { PencilWeekInput } from "#lib/use-cases/pencil-week.input.ts";
import { saveLunch } from "#lib/use-cases/save-lunch.ts";
import { SaveLunchInput } from "#lib/use-cases/save-lunch.input.ts";
import { describeSwapLunchesProblem, swapLunches } from "#lib/use-cases/swap-lunches.ts";
import { undoSlate } from "#lib/use-cases/undo-slate.ts";
import { testContext } from "#tests/support/test-context.ts";

const FIRST = day("2026-03-09");
const SECOND = day("2026-03-16");

async function pencil(context: Context, monday: string, title: string): Promise<string> {
  const outcome = await pencilWeek(context, PencilWeekInput.parse({ monday, title }));
  return outcome.ok ? outcome.value.id : "";
}

async function compose(context: Context, date: string, foods: readonly string[]) {
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date } });
  const items = foods.map((foodId) => ({ foodId, part: "fruit", amount: 80, unit: "g" }));
  const { id: lunchId, revision } = lunch;
  return saveLunch(context, SaveLunchInput.parse({ lunchId, revision, angle: date, items }));
}

/** Everything the slate holds, in a form that two moments can be compared by. */
async function slateNow({ db }: Context): Promise<unknown> {
  return db.episode.findMany({
    orderBy: { weekOf: "asc" },
    include: {
      lunches: {
        orderBy: { date: "asc" },
        include: {
          items: { orderBy: { position: "asc" }, include: { tricks: true, shares: true } },
        },
      },
    },
  });
}

test("each change of the slate is taken back to the letter, last first", async () => {
  const context = testContext("2026-03-09");
  const moments: unknown[] = [await slateNow(context)];
  const then = async (change: Promise<unknown>): Promise<void> => {
    expect(await change).toMatchObject({ ok: true });
    moments.push(await slateNow(context));
  };
  const first = await pencil(context, FIRST, "Night Train");
  moments.push(await slateNow(context));
  await then(compose(context, "2026-03-10", ["apple", "banana"]));
  await then(compose(context, "2026-03-10", ["banana"]));
  const second = await pencil(context, SECOND, "Tide Pool");
  moments.push(await slateNow(context));
  await then(compose(context, "2026-03-18", ["pear"]));
  await then(moveEpisode(context, { episodeId: first, monday: SECOND }));
  await then(swapLunches(context, { from: day("2026-03-17"), to: day("2026-03-11") }));
  const words = {
    themeId: "night-train",
    title: "",
    notes: "fog",
    surprise: "a bell",
    revealOn: "",
  };
  await then(editEpisode(context, { ...words, revealOn: "", episodeId: first, revision: 1 }));
  await then(removeEpisode(context, second));

  while (moments.length > 1) {
    expect(await slateNow(context)).toEqual(moments.pop());
    expect(await undoSlate(context)).toMatchObject({ ok: true });
  }
  expect(await slateNow(context)).toEqual(moments[0]);
  expect(await undoSlate(context)).toEqual({ ok: false, problem: { kind: "nothing" } });
});

test("an episode that moves changes places, keeps its weekdays and is numbered anew", async () => {
  const context = testContext("2026-03-02");
  const first = await pencil(context, FIRST, "Night Train");
  await pencil(context, SECOND, "Tide Pool");
  await compose(context, "2026-03-11", ["apple"]);
  await moveEpisode(context, { episodeId: first, monday: SECOND });
  const rows = await context.db.episode.findMany({ orderBy: { weekOf: "asc" } });
  expect(rows.map((row) => [row.weekOf, row.workingTitle, row.number])).toEqual([
    [FIRST, "Tide Pool", 1],
    [SECOND, "Night Train", 2],
  ]);
  const lunch = await context.db.lunch.findFirstOrThrow({ where: { items: { some: {} } } });
  expect(lunch.date).toBe("2026-03-18");
});

test("a filled lunch does not fall on a day off, and then nothing has moved", async () => {
  const context = testContext("2026-03-02");
  const first = await pencil(context, FIRST, "Night Train");
  await compose(context, "2026-03-11", ["apple"]);
  await context.db.dayOff.create({
    data: { from: "2026-03-18", to: "2026-03-18", label: "Harbour fair" },
  });
  const before = await slateNow(context);
  const outcome = await moveEpisode(context, { episodeId: first, monday: SECOND });
  expect(outcome).toEqual({ ok: false, problem: { kind: "day-off", date: "2026-03-18" } });
  expect(await slateNow(context)).toEqual(before);
});

test("what has happened is neither moved, removed nor taken back", async () => {
  const context = testContext("2026-03-09");
  const first = await pencil(context, FIRST, "Night Train");
  await compose(context, "2026-03-09", ["apple"]);
  const lunch = await context.db.lunch.findUniqueOrThrow({ where: { date: "2026-03-09" } });
  await packLunch(context, { lunchId: lunch.id, minutes: 20 });
  const happened = { ok: false, problem: { kind: "has-happened" } };
  expect(await moveEpisode(context, { episodeId: first, monday: SECOND })).toEqual(happened);
  expect(await removeEpisode(context, first)).toEqual(happened);
  expect(await undoSlate(context)).toEqual({ ok: false, problem: { kind: "happened-since" } });
});

test("a saved lunch keeps the product of an item that stays, and drops it when the food changes", async () => {
  const context = testContext("2026-03-09");
  await pencil(context, FIRST, "Night Train");
  await compose(context, "2026-03-09", ["apple", "banana"]);
  const product = await context.db.product.create({
    data: { foodId: "apple", name: "Red apples" },
  });
  const lunch = await context.db.lunch.findUniqueOrThrow({
    where: { date: "2026-03-09" },
    include: { items: { orderBy: { position: "asc" } } },
  });
  const [apple, banana] = lunch.items.map((item) => item.id);
  await context.db.lunchItem.update({
    where: { id: apple ?? "" },
    data: { productId: product.id, note: "the small ones" },
  });
  const line = { part: "fruit", amount: 90, unit: "g" };
  const save = (revision: number, foodId: string) =>
    saveLunch(
      context,
      SaveLunchInput.parse({
        lunchId: lunch.id,
        revision,
        angle: "",
        items: [
          { ...line, id: banana, foodId: "banana" },
          { ...line, id: apple, foodId },
        ],
      }),
    );
  expect(await save(2, "apple")).toEqual({
    ok: true,
    value: { revision: 3, itemIds: [banana, apple] },
  });
  expect(await context.db.lunchItem.findUnique({ where: { id: apple ?? "" } })).toMatchObject({
    productId: product.id,
    note: "the small ones",
    amount: 90,
    position: 1,
  });
  await save(3, "pear");
  expect(await context.db.lunchItem.findUnique({ where: { id: apple ?? "" } })).toMatchObject({
    foodId: "pear",
    productId: null,
  });
});

test("two lunches change places, within a week and across weeks, and a packed one stays", async () => {
  const context = testContext("2026-03-09");
  await pencil(context, FIRST, "Night Train");
  await pencil(context, SECOND, "Tide Pool");
  await compose(context, "2026-03-10", ["apple"]);
  await compose(context, "2026-03-12", ["pear", "banana"]);
  const foodsOn = async (date: string): Promise<string[]> => {
    const where = { lunch: { date } };
    const items = await context.db.lunchItem.findMany({ where, orderBy: { position: "asc" } });
    return items.map(({ foodId }) => foodId);
  };
  const [tuesday, thursday, next] = [day("2026-03-10"), day("2026-03-12"), day("2026-03-18")];

  expect(await swapLunches(context, { from: tuesday, to: thursday })).toMatchObject({ ok: true });
  expect([await foodsOn(tuesday), await foodsOn(thursday)]).toEqual([
    ["pear", "banana"],
    ["apple"],
  ]);
  expect(await swapLunches(context, { from: thursday, to: next })).toMatchObject({ ok: true });
  expect([await foodsOn(thursday), await foodsOn(next)]).toEqual([[], ["apple"]]);
  const moved = await context.db.lunch.findUniqueOrThrow({
    where: { date: next },
    include: { episode: true },
  });
  expect([moved.episode.weekOf, moved.angle]).toEqual([SECOND, "2026-03-10"]);

  const { id: lunchId } = await context.db.lunch.findUniqueOrThrow({ where: { date: tuesday } });
  await packLunch(context, { lunchId, minutes: 20 });
  const refused = await swapLunches(context, { from: next, to: tuesday });
  expect(refused).toEqual({ ok: false, problem: { kind: "packed", date: tuesday } });
  expect(refused.ok || describeSwapLunchesProblem(refused.problem)).toMatch(
    /stays where it happened/,
  );
  const off = await swapLunches(context, { from: next, to: day("2026-03-21") });
  expect(off).toEqual({ ok: false, problem: { kind: "no-lunch", date: "2026-03-21" } });
  expect(await foodsOn(next)).toEqual(["apple"]);
});
