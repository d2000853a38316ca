import { expect, test } from "vitest";
import { readEpisode, readSettings } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { listStandIns, putStandIn } from "#lib/use-cases/errands/stand-in.ts";
import { listChoices } from "#lib/use-cases/list-choices.ts";
import { FoodInput } from "#lib/use-cases/larder/food.input.ts";
import { loadFood } from "#lib/use-cases/larder/load-food.ts";
import { saveFood } from "#lib/use-cases/larder/save-food.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { readChecks } from "#lib/use-cases/read-checks.ts";
import { saveLunch } from "#lib/use-cases/save-lunch.ts";
import { addIdea, settleIdea } from "#lib/use-cases/themes/ideas.ts";
import { loadThemes } from "#lib/use-cases/themes/load-themes.ts";
import { SettleIdeaInput } from "#lib/use-cases/themes/theme.input.ts";
import { errandSeries, MONDAY, SATURDAY } from "#tests/support/errand-series.ts";
import { testContext } from "#tests/support/test-context.ts";

/** A week with hummus on Monday, a child that sesame makes ill, and a viewer's wish for a dip. */
async function wished(): Promise<{ context: Context; id: string }> {
  const context = testContext(SATURDAY);
  await errandSeries(context, MONDAY, [
    { on: "2026-03-16", foodId: "hummus", amount: 30, unit: "g" },
    { on: "2026-03-17", foodId: "grapes", amount: 50, unit: "g" },
  ]);
  await context.db.lunchItem.updateMany({ where: { foodId: "hummus" }, data: { part: "dip" } });
  await context.db.avoidance.create({
    data: { childId: "pepper", allergen: "sesame", severity: "severe" },
  });
  await addIdea(context, { text: "a dip of moon beans" });
  const [idea] = (await loadThemes(context)).ideas;
  const input = { id: idea?.id, into: "food", name: "Moon bean dip" };
  await settleIdea(context, SettleIdeaInput.parse(input));
  const { id } = await context.db.food.findFirstOrThrow({ where: { name: "Moon bean dip" } });
  // As alike to hummus as can be, and with nothing on record against it: only being a wish is left.
  const hummus = await context.db.food.findUniqueOrThrow({ where: { id: "hummus" } });
  await context.db.food.update({
    where: { id },
    data: {
      ...{ familyId: hummus.familyId, group: hummus.group, partsJson: hummus.partsJson },
      ...{ coloursJson: hummus.coloursJson, maybeJson: "[]" },
    },
  });
  return { context, id };
}

async function offeredBy(context: Context, id: string) {
  const { db } = context;
  const plan = await planProblemFor(db, [MONDAY], context.today);
  const errands = await listStandIns(context, { monday: MONDAY, foodId: "hummus" });
  const episode = await readEpisode(db, MONDAY);
  const [lunch] = episode?.lunches ?? [];
  if (!lunch) throw new Error("the week has a Monday");
  const checks = await readChecks(db, [lunch], await readSettings(db));
  const suggested = checks.inFull(lunch, []).flatMap(({ standIns }) => standIns?.names ?? []);
  await db.food.update({ where: { id: "hummus" }, data: { recalledAt: context.now } });
  const page = await loadFood(context, "hummus", 1);
  await db.food.update({ where: { id: "hummus" }, data: { recalledAt: null } });
  if (!page || "mergedInto" in page) throw new Error("hummus has a page");
  const choices = await listChoices(context);
  return {
    planner: plan.items.some((item) => item.foodId === id),
    errands: errands.some((food) => food.id === id),
    checks: suggested.includes("Moon bean dip"),
    larder: page.standIns?.some((food) => food.id === id),
    composer: choices.foods.some((food) => food.id === id),
  };
}

test("a wished food is not proposed or suggested until its sheet is saved, and may be composed by hand", async () => {
  const { context, id } = await wished();
  const no = { planner: false, errands: false, checks: false, larder: false };
  expect(await offeredBy(context, id)).toEqual({ ...no, composer: true });
  const put = { monday: MONDAY, foodId: "hummus", standInId: id };
  expect(await putStandIn(context, put)).toMatchObject({ problem: { kind: "food-gone" } });

  const page = await loadFood(context, id, 1);
  if (!page || "mergedInto" in page) throw new Error("a wish has a page");
  expect(page.isWish).toBe(true);
  expect((await saveFood(context, FoodInput.parse(page.fields))).ok).toBe(true);
  const yes = { planner: true, errands: true, checks: true, larder: true };
  expect(await offeredBy(context, id)).toEqual({ ...yes, composer: true });
  expect((await putStandIn(context, put)).ok).toBe(true);
});

test("a wished food can be put into a lunch by hand", async () => {
  const { context, id } = await wished();
  const own = { part: "dip" as const, amount: 30, unit: "g", id: "", shopId: "" };
  const items = [{ ...own, foodId: id, trickIds: [], shares: [] }];
  const lunch = { lunchId: "lunch-2026-03-16", revision: 1, angle: "", items };
  expect((await saveLunch(context, lunch)).ok).toBe(true);
  expect(await context.db.lunchItem.count({ where: { foodId: id } })).toBe(1);
});
