import { expect, test } from "vitest";
import { day, weeksLater } from "#lib/calendar/index.ts";
import { readFoods } from "#lib/db/index.ts";
import { proposePlan, scorePlan, type Plan, type PlanProblem } from "#lib/planner/index.ts";
import { guidanceFor } from "#lib/safety/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { NO_WISHES, withWishes } from "#lib/use-cases/proposal/desk.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { brokenRules } from "#tests/support/check-plan.ts";
import { testContext } from "#tests/support/test-context.ts";

const CHILD = { privateName: "Tomas", onScreenName: "Pepper", allergens: [] };
const MONDAYS = [0, 1, 2, 3].map((week) => weeksLater(day("2026-05-04"), week));

async function demoProblem() {
  const context = testContext("2026-03-11");
  await loadDemo(context, tinHarbour, referenceThemes());
  return { context, problem: await planProblemFor(context.db, MONDAYS, context.today) };
}

/** The problem with only some of its aims on. */
function aimingAt(problem: PlanProblem, weights: Partial<PlanProblem["weights"]>): PlanProblem {
  const off = Object.fromEntries(Object.keys(problem.weights).map((aim) => [aim, 0]));
  return { ...problem, weights: { ...problem.weights, ...off, ...weights } };
}

test("dressed foods stand beside plain ones, few, sliceable or worn before, with all that binds the food", async () => {
  const { context, problem } = await demoProblem();
  const dressed = problem.items.filter(({ trickIds }) => trickIds.length > 0);
  expect(dressed.length).toBeGreaterThan(20);
  expect(dressed.length).toBeLessThanOrEqual(24 * problem.parts.length);
  const foods = new Map((await readFoods(context.db)).map((food) => [String(food.id), food]));
  const tricks = new Map((await context.db.trick.findMany()).map((trick) => [trick.id, trick]));
  const plainOf = new Map(
    problem.items
      .filter(({ trickIds }) => trickIds.length === 0)
      .map((item) => [item.foodId, item]),
  );
  for (const item of dressed) {
    const food = foods.get(item.foodId);
    const trick = tricks.get(item.trickIds[0] ?? "");
    const plain = plainOf.get(item.foodId);
    if (!food || !trick || !plain) throw new Error(`${item.name} stands alone`);
    expect(trick.kind).not.toBe("garnish");
    expect(guidanceFor(food)).toBeUndefined();
    expect(trick.needsSliceable && !food.sliceable).toBe(false);
    if (!trick.needsSliceable) {
      const worn = await context.db.itemTrick.count({
        where: { trickId: trick.id, item: { foodId: food.id } },
      });
      expect(worn).toBeGreaterThan(0);
    }
    expect(item.minutes).toBeCloseTo(plain.minutes + trick.minutes, 6);
    const fitOf = new Map(plain.fits.map(({ themeId, fit }) => [themeId, fit]));
    expect(item.fits.some(({ themeId, fit }) => fit > (fitOf.get(themeId) ?? 0))).toBe(true);
    for (const rules of [problem.forbidden, problem.rests, problem.owed]) {
      const binding = rules.filter(({ itemIds }) => itemIds.includes(plain.id));
      expect(binding.every(({ itemIds }) => itemIds.includes(item.id))).toBe(true);
    }
    expect(problem.rests.some(({ id }) => id === `trick:${trick.id}`)).toBe(true);
  }
});

test("tricks raise how well a month fits its themes, within every rule", async () => {
  const { problem } = await demoProblem();
  const asked = aimingAt(problem, { theme: 3, liked: 1 });
  const plain = { ...asked, items: asked.items.filter(({ trickIds }) => trickIds.length === 0) };
  const withThem = proposePlan(asked, { seed: "a" }).plan;
  expect(brokenRules(asked, withThem)).toEqual([]);
  const without = scorePlan(plain, proposePlan(plain, { seed: "a" }).plan);
  expect(scorePlan(asked, withThem).aims.theme).toBeGreaterThan(without.aims.theme);
});

test("every item says where its food is sold, and the slider for few shops spares visits", async () => {
  const context = testContext("2026-03-11");
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [CHILD] }));
  const ids = ["near", "far"];
  await context.db.shop.createMany({
    data: ids.map((id, distanceOrder) => ({ id, name: id, distanceOrder })),
  });
  const foods = (await readFoods(context.db)).filter(({ group }) => group !== "grain");
  const counter = (place: number): string => (place % 8 === 0 ? "far" : "near");
  await context.db.product.createMany({
    data: foods.map(({ id, name }) => ({ id: `pack-of-${id}`, foodId: id, name })),
  });
  await context.db.productShop.createMany({
    data: foods.map(({ id }, place) => ({ productId: `pack-of-${id}`, shopId: counter(place) })),
  });
  const problem = await planProblemFor(context.db, MONDAYS, context.today);
  expect(problem.shops.map(({ id }) => id)).toEqual(ids);
  const placeOf = new Map(foods.map(({ id }, place) => [String(id), place]));
  for (const { foodId, shopIds } of problem.items) {
    const place = placeOf.get(foodId);
    // Nobody sells grain, so nothing is known of where to go for it.
    expect(shopIds).toEqual(place === undefined ? [] : [counter(place)]);
  }
  const few = proposePlan(aimingAt(problem, { shops: 3, liked: 1 }), { seed: "a" }).plan;
  const any = proposePlan(aimingAt(problem, { liked: 1 }), { seed: "a" }).plan;
  const visits = (plan: Plan) => scorePlan(aimingAt(problem, { shops: 1 }), plan).aims.shops / -8;
  expect(visits(few)).toBeLessThan(visits(any));
});

test("themes near each other stay four weeks apart, from weeks that were on too", async () => {
  const context = testContext("2026-02-20");
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [] }));
  await context.db.theme.updateMany({ data: { retiredAt: new Date() } });
  const theme = (id: string, name: string, motifs: string[]) =>
    context.db.theme.create({ data: { id, name, motifsJson: JSON.stringify(motifs) } });
  await theme("tide", "Tide Pool", ["sea", "shell"]);
  await theme("shore", "Long Shore", ["sea", "shell", "sand"]);
  await theme("train", "Night Train", ["train"]);
  const items = { create: [{ foodId: "jam", part: "dip", amount: 20 }] };
  const lunches = { create: [{ date: "2026-04-21", items }] };
  await context.db.episode.create({
    data: { number: 1, weekOf: "2026-04-20", themeId: "tide", lunches },
  });
  const problem = await planProblemFor(context.db, MONDAYS, context.today);
  expect(problem.themesApart).toEqual([
    { themeIds: ["shore", "tide"], days: 28, why: "sea, shell" },
  ]);
  const outOf = (id: string) =>
    problem.themes.find((one) => one.id === id)?.notIn.map(({ monday, why }) => `${monday} ${why}`);
  expect(outOf("shore")).toEqual([
    "2026-05-04 too near to Tide Pool",
    "2026-05-11 too near to Tide Pool",
  ]);
  expect(outOf("train")).toEqual([]);
});

test("what the user keeps out is the food in every trick", async () => {
  const { problem } = await demoProblem();
  const [dressed] = problem.items.filter(({ trickIds }) => trickIds.length > 0);
  if (!dressed) throw new Error("nothing is dressed");
  const { forbidden } = withWishes(problem, { ...NO_WISHES, bans: [dressed.id] });
  const ban = forbidden.find(({ kind }) => kind === "ban");
  const all = problem.items.filter(({ foodId }) => foodId === dressed.foodId).map(({ id }) => id);
  expect(all.length).toBeGreaterThan(1);
  expect(ban?.itemIds).toEqual(all);
});
