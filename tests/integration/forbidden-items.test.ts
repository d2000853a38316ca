import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readChildren, readFoods, readSchoolRules } from "#lib/db/index.ts";
import { isAllowed, UNLIMITED_RULE } from "#lib/safety/index.ts";
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
  const lists = problem.forbidden.filter(({ kind }) => kind !== "season" && kind !== "resting");
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
