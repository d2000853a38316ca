import { expect, test } from "vitest";
import { addDays } from "#lib/calendar/index.ts";
import { readVerdicts } from "#lib/db/index.ts";
import { eatenShare } from "#lib/reactions/index.ts";
import { loadChildLedger } from "#lib/use-cases/load-child-ledger.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadFoodLedger } from "#lib/use-cases/load-food-ledger.ts";
import { loadLedger } from "#lib/use-cases/load-ledger.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function demo() {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

test("shares, counts and money are those of the records of the span, counted by hand", async () => {
  const context = await demo();
  const view = await loadLedger(context, "quarter");
  const from = addDays(context.today, -91);
  const inSpan = (await readVerdicts(context.db)).filter(
    ({ day }) => day >= from && day <= context.today,
  );
  expect(view.verdictCount).toBe(inSpan.length);
  const pepper = view.children.find(({ name }) => name === "Pepper");
  const fruit = inSpan.filter(
    ({ childId, part, eaten }) => childId === pepper?.id && part === "fruit" && eaten !== null,
  );
  const mean = fruit.reduce((sum, { eaten }) => sum + eatenShare(eaten ?? 0), 0) / fruit.length;
  const shown = pepper?.byPart.find(({ part }) => part === "fruit");
  expect(shown?.verdicts).toBe(fruit.length);
  expect(shown?.share).toBeCloseTo(mean, 10);

  const { waste, wasteOverTime } = view;
  expect(waste.wastedCents).toBeGreaterThan(0);
  expect(waste.wastedCents).toBeLessThan(waste.packedCents);
  const summed = wasteOverTime.reduce((sum, { wastedCents }) => sum + wastedCents, 0);
  expect(Math.abs(summed - waste.wastedCents)).toBeLessThanOrEqual(wasteOverTime.length);
});

test("a price doubled before all lunches doubles what its leavings cost", async () => {
  const context = await demo();
  await context.db.lunchItem.updateMany({ data: { productId: null } });
  const before = await loadLedger(context, "year");
  await context.db.$executeRaw`UPDATE "Food" SET "servingCents" = 2 * "servingCents"`;
  const after = await loadLedger(context, "year");
  expect(after.waste.wastedCents / before.waste.wastedCents).toBeCloseTo(2, 3);
  expect(after.waste.unpriced).toBe(before.waste.unpriced);
});

test("every food a child met stands in one group, with its tastings and a sentence why", async () => {
  const context = await demo();
  const child = await context.db.child.findFirstOrThrow({ where: { onScreenName: "Pepper" } });
  const view = await loadChildLedger(context, child.id);
  const foods = view?.groups.flatMap((group) => group.foods) ?? [];
  const met = (await readVerdicts(context.db)).filter(
    ({ childId, day, eaten, face }) =>
      childId === child.id && day <= context.today && (eaten ?? face) !== null,
  );
  expect(foods.map(({ foodId }) => foodId).sort()).toEqual(
    [...new Set(met.map(({ foodId }) => foodId))].sort(),
  );
  for (const food of foods) expect(food.why).toContain("Pepper");
  const resting = view?.groups.find(({ kind }) => kind === "resting")?.foods ?? [];
  expect(resting.length).toBeGreaterThan(0);
  for (const { standing } of resting)
    expect(standing.kind === "resting" && standing.until > context.today).toBe(true);
  const tried = new Set(view?.tryAgain.map(({ foodId }) => foodId));
  for (const { foodId } of resting) expect(tried.has(foodId)).toBe(false);
});

test("the path of a food counts its tastings; a food or child that is not there has none", async () => {
  const context = await demo();
  const ledger = await loadFoodLedger(context, "carrot-sticks");
  expect(ledger?.paths.map(({ child }) => child)).toEqual(["Biscuit", "Pepper"]);
  for (const { points, acceptance } of ledger?.paths ?? []) {
    expect(points.at(-1)?.tasting).toBe(acceptance.history?.tastings);
    expect(points).toHaveLength(acceptance.history?.offers ?? -1);
  }
  expect(await loadFoodLedger(context, "no-such-food")).toBeUndefined();
  expect(await loadChildLedger(context, "nobody")).toBeUndefined();
});

test("a series without a verdict has an empty ledger", async () => {
  const view = await loadLedger(testContext(), "all");
  expect(view).toMatchObject({ from: null, verdictCount: 0, children: [], tricks: [] });
});
