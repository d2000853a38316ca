import { expect, test } from "vitest";
import { readFoods } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { readQuickLine, type QuickProposal } from "#lib/use-cases/larder/read-quick-line.ts";
import { teachAlias } from "#lib/use-cases/larder/teach-alias.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const read = (context: Context, line: string): Promise<QuickProposal[]> =>
  readQuickLine(context, { line });

test("a whole lunch becomes items with amount, unit, part, trick and the doubt, and nothing is written", async () => {
  const context = testContext();
  const before = await context.db.$queryRawUnsafe("SELECT total_changes() AS n");
  const items = await read(
    context,
    "oat squares; ¼ cup hummus + cucumber ribbons; 1–2 clementines each; watr",
  );
  expect(items.map(({ foods, isKnown }) => (isKnown ? foods[0]?.id : null))).toEqual([
    null,
    "hummus",
    "cucumber-slices",
    "clementine",
    "water",
  ]);
  expect(items[1]).toMatchObject({ amount: 0.25, unit: "cup", part: "dip", doubts: [] });
  expect(items[2]?.tricks).toEqual([{ id: "ribbons", name: "ribbons" }]);
  expect(items[3]).toMatchObject({
    amount: 1.5,
    doubts: ["A range was typed; its middle is taken."],
  });
  expect(items[4]?.doubts).toContain("Read as “water”.");
  expect(items[0]?.doubts[0]).toContain("No food of the Larder goes by that name");
  expect(await context.db.$queryRawUnsafe("SELECT total_changes() AS n")).toEqual(before);
});

test("a corrected match is known from then on, by its name without amount and trick", async () => {
  const context = testContext();
  const [unknown] = await read(context, "2 harbour coins each");
  expect(unknown?.isKnown).toBe(false);
  const phrase = unknown?.phrase ?? "";
  expect(await teachAlias(context, { foodId: "cucumber-slices", phrase })).toEqual({
    ok: true,
    value: "harbour coins",
  });
  const [known] = await read(context, "star-shaped harbour coins");
  expect(known).toMatchObject({ isKnown: true, tricks: [{ id: "star-cutter" }] });
  expect(known?.foods[0]?.id).toBe("cucumber-slices");
  expect(await teachAlias(context, { foodId: "cucumber-slices", phrase })).toEqual({
    ok: true,
    value: null,
  });
});

test("the latest correction holds, and outlives a later catalogue", async () => {
  const context = testContext();
  const phrase = "harbour coins";
  await teachAlias(context, { foodId: "cucumber-slices", phrase });
  await teachAlias(context, { foodId: "carrot-sticks", phrase });
  const catalogue = referenceCatalogue();
  await loadCatalogue(context.db, { ...catalogue, version: catalogue.version + 1 });
  const holders = (await readFoods(context.db)).filter(({ aliases }) => aliases.includes(phrase));
  expect(holders.map(({ id }) => id)).toEqual(["carrot-sticks"]);
});

test("a food that is gone or merged is taught nothing", async () => {
  const context = testContext();
  const outcome = await teachAlias(context, { foodId: "moon-cheese", phrase: "moon cheese" });
  expect(outcome).toEqual({ ok: false, problem: { kind: "gone" } });
  expect(await context.db.foodAlias.count({ where: { name: "moon cheese" } })).toBe(0);
});

test.each([";;; + | ", "½", "0 cups of", "((((", "each", "x".repeat(600), "🥕🥕; 1e999 apples"])(
  "the line %j is read without a fault",
  async (line) => {
    const items = await read(testContext(), line);
    expect(items.every(({ amount }) => Number.isFinite(amount))).toBe(true);
  },
);
