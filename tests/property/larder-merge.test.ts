import fc from "fast-check";
import { expect, test } from "vitest";
import type { Context } from "#lib/use-cases/context.ts";
import { FoodInput } from "#lib/use-cases/larder/food.input.ts";
import { fieldsOf } from "#lib/use-cases/larder/food-fields.ts";
import { mergeFoods, undoMerge } from "#lib/use-cases/larder/merge-foods.ts";
import { saveFood } from "#lib/use-cases/larder/save-food.ts";
import { readFoods } from "#lib/db/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const FOODS = ["crispbread", "beets", "hummus", "cucumber-slices", "apple-slices", "gouda"];
const step = fc.oneof(
  fc.record({
    kind: fc.constant("merge" as const),
    from: fc.constantFrom(...FOODS),
    into: fc.constantFrom(...FOODS),
  }),
  fc.record({ kind: fc.constant("rename" as const), food: fc.constantFrom(...FOODS) }),
);

/** Everything that speaks of a food: how often each food is on, held, sold, avoided and named. */
async function counts({ db }: Context): Promise<Map<string, number>> {
  const rows = await db.$queryRaw<readonly { readonly key: string; readonly n: bigint }[]>`
    SELECT 'item ' || "foodId" AS key, count(*) AS n FROM "LunchItem" GROUP BY 1 UNION ALL
    SELECT 'lot ' || "foodId", count(*) FROM "Stock" GROUP BY 1 UNION ALL
    SELECT 'product ' || "foodId", count(*) FROM "Product" GROUP BY 1 UNION ALL
    SELECT 'avoided ' || "foodId", count(*) FROM "Avoidance" WHERE "foodId" IS NOT NULL GROUP BY 1
    UNION ALL SELECT 'name ' || "foodId" || ' ' || "name", count(*) FROM "FoodAlias" GROUP BY 1`;
  return new Map(rows.map(({ key, n }) => [key, Number(n)]));
}

async function rename(context: Context, id: string, turn: number): Promise<void> {
  const food = (await readFoods(context.db)).find((one) => one.id === id);
  const row = await context.db.food.findUnique({ where: { id } });
  if (!food || !row) return;
  const typed = { ...fieldsOf(food, row), name: `renamed ${id} ${turn}` };
  expect(await saveFood(context, FoodInput.parse(typed))).toMatchObject({ ok: true });
}

test("merging and renaming never change counts of appearances, and undone merges leave no trace", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
      const context = testContext();
      await loadDemo(context, tinHarbour, referenceThemes());
      const child = await context.db.child.findFirstOrThrow();
      await context.db.avoidance.create({
        data: { childId: child.id, foodId: "hummus", severity: "avoid" },
      });
      const before = await counts(context);
      const holder = new Map(FOODS.map((id) => [id, id]));
      const merged: string[] = [];
      for (const [turn, one] of steps.entries()) {
        if (one.kind === "rename") await rename(context, one.food, turn);
        else {
          const outcome = await mergeFoods(context, one);
          const isOpen = (id: string): boolean => holder.get(id) === id;
          expect(outcome.ok).toBe(one.from !== one.into && isOpen(one.from) && isOpen(one.into));
          if (!outcome.ok) continue;
          merged.unshift(outcome.value);
          for (const [id, at] of holder) if (at === one.from) holder.set(id, one.into);
        }
      }
      const after = await counts(context);
      for (const what of ["item", "lot", "product", "avoided"]) {
        for (const id of new Set(holder.values())) {
          const led = FOODS.filter((food) => holder.get(food) === id);
          const total = led.reduce((sum, food) => sum + (before.get(`${what} ${food}`) ?? 0), 0);
          expect(after.get(`${what} ${id}`) ?? 0).toBe(total);
        }
      }
      for (const changeId of merged) {
        expect(await undoMerge(context, changeId)).toMatchObject({ ok: true });
      }
      expect(await counts(context)).toEqual(before);
      expect(await context.db.$queryRawUnsafe("PRAGMA foreign_key_check")).toEqual([]);
    }),
    { numRuns: 8 },
  );
});

test("an allergen that only the duplicate named stays, as check the label, until the merge is undone", async () => {
  const context = testContext();
  const maybe = async (id: string): Promise<readonly string[]> =>
    (await readFoods(context.db)).find((food) => food.id === id)?.maybeAllergens ?? [];
  const before = await maybe("apple");
  expect(before).not.toContain("milk");
  const outcome = await mergeFoods(context, { from: "gouda", into: "apple" });
  expect(await maybe("apple")).toContain("milk");
  await undoMerge(context, outcome.ok ? outcome.value : "");
  expect(await maybe("apple")).toEqual(before);
});

test("a school rule that names the duplicate then names the other food, and back", async () => {
  const context = testContext();
  await context.db.schoolRule.create({
    data: { name: "no gouda", ruleJson: JSON.stringify({ foods: ["gouda", "pear"] }) },
  });
  const foods = async (): Promise<unknown> =>
    (JSON.parse((await context.db.schoolRule.findFirstOrThrow()).ruleJson) as { foods: unknown })
      .foods;
  const outcome = await mergeFoods(context, { from: "gouda", into: "pear" });
  expect(await foods()).toEqual(["pear"]);
  await undoMerge(context, outcome.ok ? outcome.value : "");
  expect(await foods()).toEqual(["gouda", "pear"]);
});

test("a merge into a food that was itself merged on is not taken back out of order", async () => {
  const context = testContext();
  const first = await mergeFoods(context, { from: "gouda", into: "pear" });
  const second = await mergeFoods(context, { from: "pear", into: "apple" });
  const early = await undoMerge(context, first.ok ? first.value : "");
  expect(early).toEqual({ ok: false, problem: { kind: "merged-on" } });
  expect(await undoMerge(context, second.ok ? second.value : "")).toMatchObject({ ok: true });
  expect(await undoMerge(context, first.ok ? first.value : "")).toMatchObject({ ok: true });
  expect(await undoMerge(context, first.ok ? first.value : "")).toEqual({
    ok: false,
    problem: { kind: "nothing" },
  });
});
