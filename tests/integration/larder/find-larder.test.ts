import { expect, test } from "vitest";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { findLarder, type LarderView } from "#lib/use-cases/larder/find-larder.ts";
import { FindLarderInput } from "#lib/use-cases/larder/find-larder.input.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadEstimates } from "#lib/use-cases/load-estimates.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function demo(): Promise<Context> {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

const find = (context: Context, asked: object): Promise<LarderView> =>
  findLarder(context, FindLarderInput.parse(asked));

/** All rows of all pages. */
async function all(context: Context, asked: object): Promise<LarderView["rows"]> {
  const { pages } = await find(context, asked);
  const views = await Promise.all(
    Array.from({ length: pages }, (_, index) => find(context, { ...asked, page: index + 1 })),
  );
  return views.flatMap(({ rows }) => rows);
}

test("a search finds a food by alias, slip, product and shop, and nothing by nonsense", async () => {
  const context = await demo();
  const first = async (q: string): Promise<string | undefined> =>
    (await find(context, { q })).rows[0]?.id;
  expect(await first("cucumbr slices")).toBe("cucumber-slices");
  expect(await first("gift tin")).toBe("crispbread");
  const sold = await find(context, { q: "saturday fish steps" });
  expect(sold.rows.length).toBeGreaterThan(0);
  expect(sold.rows.every(({ from }) => from === "Saturday Fish Steps")).toBe(true);
  expect((await find(context, { q: "qqqq zzzz" })).rows).toEqual([]);
  expect((await find(context, { q: "star cutter" })).foundTricks).not.toEqual([]);
});

test("each filter keeps exactly the foods that a plain reading of the rows keeps", async () => {
  const context = await demo();
  const foods = await context.db.food.findMany();
  const idsOf = async (asked: object): Promise<string[]> =>
    (await all(context, asked)).map(({ id }) => id).sort();
  const plainly = (keep: (food: (typeof foods)[number]) => boolean): string[] =>
    foods
      .filter(keep)
      .map(({ id }) => id)
      .sort();
  const has = (json: string | null, value: unknown): boolean =>
    ((JSON.parse(json ?? "[]") ?? []) as unknown[]).includes(value);

  expect(await idsOf({ show: "all" })).toEqual(plainly(() => true));
  expect(await idsOf({ group: "dairy" })).toEqual(plainly((food) => food.group === "dairy"));
  expect(await idsOf({ colour: "purple" })).toEqual(plainly((f) => has(f.coloursJson, "purple")));
  expect(await idsOf({ motif: "sea" })).toEqual(plainly((food) => has(food.motifsJson, "sea")));
  expect(await idsOf({ show: "season" })).toEqual(plainly((food) => has(food.seasonJson, 3)));

  const since = addDays(context.today, -8 * 7);
  const recent = new Set(await foodsOnAfter(context, since));
  expect(await idsOf({ unseen: 8 })).toEqual(plainly((food) => !recent.has(food.id)));
  const both = await idsOf({ unseen: 8, group: "fruit" });
  expect(both).toEqual(plainly((food) => !recent.has(food.id) && food.group === "fruit"));
});

async function foodsOnAfter({ db, today }: Context, since: Day): Promise<string[]> {
  const items = await db.lunchItem.findMany({
    where: { fate: { not: "scrapped" }, lunch: { date: { gt: since, lte: today } } },
  });
  return items.map(({ foodId }) => foodId);
}

test("a standing is asked of one child or of any, and agrees with the estimates", async () => {
  const context = await demo();
  const learned = await loadEstimates(context);
  const children = await context.db.child.findMany();
  for (const child of children) {
    const rows = await all(context, { standing: "resting", child: child.id });
    const expected = learned.met.filter(
      ({ childId, standing }) => childId === child.id && standing.kind === "resting",
    );
    expect(rows.map(({ id }) => id).sort()).toEqual(expected.map(({ foodId }) => foodId).sort());
  }
  const any = await all(context, { standing: "resting" });
  const { counts } = await find(context, {});
  expect(any).toHaveLength(counts.resting);
  expect(any.length).toBeGreaterThan(0);
});

test("what is retired is in its own view alone, and the table follows at once", async () => {
  const context = await demo();
  const before = await find(context, { show: "all" });
  await context.db.food.update({ where: { id: "apple" }, data: { retiredAt: context.now } });
  const after = await find(context, { show: "all" });
  expect(after.total).toBe(before.total - 1);
  expect((await find(context, { q: "whole apple" })).rows.map(({ id }) => id)).not.toContain(
    "apple",
  );
  expect((await all(context, { show: "retired" })).map(({ id }) => id)).toEqual(["apple"]);
});

test("an address that makes no sense narrows nothing, and a page beyond the last is the last", async () => {
  const context = await demo();
  const asked = { show: "all", group: "stones", colour: "7", unseen: "soon", page: "-4" };
  const whole = await find(context, { show: "all" });
  expect((await find(context, asked)).total).toBe(whole.total);
  expect((await find(context, { show: "all", page: "999" })).page).toBe(whole.pages);
});

test("before anything happened, all foods stand in the table, unmet by every child", async () => {
  const context = testContext();
  await context.db.child.create({ data: { privateName: "Ines", onScreenName: "Biscuit" } });
  const view = await find(context, {});
  expect(view.view).toBe("all");
  expect(view.counts.unmet).toBe(view.total);
  expect(view.rows.every(({ seenText }) => seenText === "not yet")).toBe(true);
});
