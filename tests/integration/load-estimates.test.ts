import { expect, test } from "vitest";
import { readVerdicts } from "#lib/db/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadEstimates } from "#lib/use-cases/load-estimates.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

test("the estimates are one for all askers, until a verdict changes them", async () => {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  const first = await loadEstimates(context);
  expect(await loadEstimates(context)).toBe(first);
  expect(first.met.length).toBeGreaterThan(100);
  expect(first.verdicts.every(({ day }) => day <= context.today)).toBe(true);

  const verdicts = await readVerdicts(context.db);
  const liked = verdicts.findLast(({ eaten }) => eaten === 4);
  if (!liked) throw new Error("Nothing of the demo was eaten up.");
  const { itemId, childId, foodId, familyId } = liked;
  const before = first.of(childId, foodId, familyId);
  await context.db.reaction.update({
    where: { itemId_childId: { itemId, childId } },
    data: { eaten: 0, face: 0 },
  });
  const after = (await loadEstimates(context)).of(childId, foodId, familyId);
  expect(after.estimate).toBeLessThan(before.estimate);
});

test("scrapped items teach nothing, and a merged food speaks as the one it became", async () => {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  const given = (await readVerdicts(context.db)).find(({ foodId }) => foodId !== "apple");
  if (!given) throw new Error("The demo holds nothing but apples.");
  await context.db.food.update({ where: { id: given.foodId }, data: { mergedIntoId: "apple" } });
  const merged = await readVerdicts(context.db);
  expect(merged.some(({ foodId }) => foodId === given.foodId)).toBe(false);
  expect(merged.find(({ itemId }) => itemId === given.itemId)).toMatchObject({ foodId: "apple" });

  await context.db.lunchItem.update({ where: { id: given.itemId }, data: { fate: "scrapped" } });
  expect((await readVerdicts(context.db)).some(({ itemId }) => itemId === given.itemId)).toBe(
    false,
  );
});

test("a series without verdicts has estimates all the same", async () => {
  const learned = await loadEstimates(testContext());
  expect(learned.met).toEqual([]);
  const { estimate, low, high, standing } = learned.of("nobody", "apple", "apple");
  expect(standing).toEqual({ kind: "unmet" });
  expect(low).toBeLessThan(estimate);
  expect(high).toBeGreaterThan(estimate);
});
