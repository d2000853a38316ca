import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readChildren, readFoods, readSchoolRules, writeSettings } from "#lib/db/index.ts";
import { isAllowed, UNLIMITED_RULE, USUAL_CARRYING } from "#lib/safety/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

test("the planner is told of exactly the foods and days that the hard filter keeps out", async () => {
  const context = testContext();
  const { db } = context;
  await loadDemo(context, tinHarbour, referenceThemes());
  await db.child.create({
    data: {
      ...{ privateName: "Away", onScreenName: "Crumb", retiredAt: context.now },
      avoidances: { create: { allergen: "milk", severity: "severe" } },
    },
  });
  await db.child.update({
    where: { id: "biscuit" },
    data: {
      avoidances: {
        create: [
          { foodId: "apple", severity: "dislike" },
          { familyId: "cucumber", severity: "avoid", note: "tummy" },
          { allergen: "egg", severity: "avoid" },
        ],
      },
    },
  });
  const name = "No crumbs on hall days";
  const ruleJson = JSON.stringify({
    ...{ ...UNLIMITED_RULE, name, traits: ["messy"] },
    ...{ weekdays: [3, 4], exceptDays: ["2026-05-14"] },
  });
  await db.schoolRule.create({ data: { name, ruleJson } });
  await db.schoolRule.create({
    data: { name: "Off", active: false, ruleJson: JSON.stringify({ allergens: ["wheat"] }) },
  });

  const mondays = [day("2026-05-04"), day("2026-05-11")];
  const problem = await planProblemFor(db, mondays, context.today);
  const foods = new Map((await readFoods(db)).map((food) => [String(food.id), food]));
  const children = (await readChildren(db)).flatMap((child) =>
    child.isRetired
      ? []
      : [
          {
            id: child.id,
            name: child.onScreenName,
            avoidances: child.avoidances.map(({ avoidance }) => avoidance),
          },
        ],
  );
  const rules = (await readSchoolRules(db)).flatMap(({ rule, isActive }) =>
    isActive ? [rule] : [],
  );
  const HARD = ["allergen", "avoidance", "school"];
  const lists = problem.forbidden.filter(({ kind }) => HARD.includes(kind));
  const told = { kept: 0, out: 0 };
  for (const { date } of problem.weeks.flatMap((week) => week.days)) {
    for (const item of problem.items) {
      const food = foods.get(item.foodId);
      if (!food) throw new Error(`${item.foodId} is not in the Larder`);
      const isOut = lists.some(
        ({ itemIds, on }) => itemIds.includes(item.id) && (on === null || on.includes(date)),
      );
      expect([food.id, date, isOut]).toEqual([
        food.id,
        date,
        !isAllowed(food, children, rules, date),
      ]);
      told[isOut ? "out" : "kept"] += 1;
    }
  }
  expect(told.out).toBeGreaterThan(50);
  expect(told.kept).toBeGreaterThan(50);
  expect(lists.map((list) => list.name)).toContain("Biscuit avoids cucumber");
});

test("a young child, a recall and a jar that cools too soon keep foods out too; cutting costs minutes", async () => {
  const context = testContext();
  const { db } = context;
  await db.child.create({
    data: { privateName: "Ines", onScreenName: "Biscuit", birthMonth: "2022-07" },
  });
  const mondays = [day("2026-06-29"), day("2026-07-06")];
  const namesOf = async (kind: string): Promise<ReadonlyMap<string, readonly string[]>> => {
    const { forbidden } = await planProblemFor(db, mondays);
    return new Map(
      forbidden.filter((one) => one.kind === kind).map(({ id, itemIds }) => [id, itemIds]),
    );
  };
  const child = await db.child.findFirstOrThrow();
  const young = await namesOf("choking");
  expect(young.get(`choking:${child.id}:48`)).toEqual(
    expect.arrayContaining(["raisins", "dried-mango"]),
  );
  expect(young.get(`choking:${child.id}:60`) ?? []).not.toContain("raisins");
  const minutes = async (id: string): Promise<number | undefined> =>
    (await planProblemFor(db, mondays)).items.find((item) => item.id === id)?.minutes;
  const cutting = await minutes("grapes");
  await db.child.update({ where: { id: child.id }, data: { birthMonth: "2014-01" } });
  expect(await namesOf("choking")).toEqual(new Map());
  expect((cutting ?? 0) - ((await minutes("grapes")) ?? 0)).toBe(3);

  expect(await namesOf("temperature")).toEqual(new Map());
  await writeSettings(db, { carrying: { ...USUAL_CARRYING, packs: 0 } });
  const warm = [...(await namesOf("temperature")).values()].flat();
  expect(warm).toEqual(expect.arrayContaining(["hummus", "chicken-breast"]));
  expect(warm).not.toContain("banana");
  expect(warm).not.toContain("carrot-sticks");
  await writeSettings(db, { carrying: USUAL_CARRYING });
  expect([...(await namesOf("temperature")).values()].flat()).not.toContain("hummus");

  expect(await namesOf("unavailable")).toEqual(new Map());
  await db.food.update({ where: { id: "hummus" }, data: { recalledAt: context.now } });
  expect([...(await namesOf("unavailable")).values()]).toEqual([["hummus"]]);

  // Of the crackers, one product is recalled: they stay while another is sold, and go with the last.
  const recalled = { foodId: "saltine-crackers", recalledAt: context.now };
  await db.product.create({ data: { ...recalled, id: "one", name: "First box" } });
  const other = await db.product.create({
    data: { foodId: "saltine-crackers", name: "Second box" },
  });
  expect([...(await namesOf("unavailable")).values()]).toEqual([["hummus"]]);
  await db.product.update({ where: { id: other.id }, data: { status: "discontinued" } });
  expect([...(await namesOf("unavailable")).values()].flat().sort()).toEqual([
    "hummus",
    "saltine-crackers",
  ]);
});
