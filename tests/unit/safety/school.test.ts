import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  checkLunch,
  hardFilter,
  SchoolRule,
  UNLIMITED_RULE,
  type BoxItem,
  type Finding,
} from "#lib/safety/index.ts";
import { child, FOODS, item, lunch } from "./box.ts";

const rule = (with_: Partial<SchoolRule>): SchoolRule =>
  SchoolRule.parse({ ...UNLIMITED_RULE, name: "The rule", ...with_ });
const check = (rules: readonly SchoolRule[], one: BoxItem, on = "2026-03-11"): Finding[] =>
  checkLunch(
    { ...lunch(one), date: day(on) },
    { children: [child()], rules, journey: null, scheme: "off" },
  );

describe("the school's rules", () => {
  test.each([
    ["nuts", "almonds"],
    ["seeds", "sunflower-seeds"],
    ["fizzy", "sparkling-water"],
    ["in-a-can", "sparkling-water"],
    ["sweets", "gummy-candy"],
    ["shop-bought", "string-cheese"],
    ["needs-spoon", "plain-yogurt"],
    ["served-warm", "vegetable-soup"],
    ["messy", "salsa"],
  ] as const)("a rule about %s stops %s and says which rule", (trait, id) => {
    const [finding] = check([rule({ name: "Rule seven", traits: [trait] })], item(id));
    expect(finding).toMatchObject({ kind: "school", level: "stop", mayKeep: true });
    expect(finding?.sentence).toContain("“Rule seven”");
    expect(check([rule({ traits: [trait] })], item("banana"))).toEqual([]);
  });
  test("glass counts by the product's own mark, warm food by the flask it goes in", () => {
    const product = {
      name: "Jar",
      allergens: [],
      maybeAllergens: [],
      traits: ["in-glass"],
    } as const;
    expect(check([rule({ traits: ["in-glass"] })], item("applesauce", { product }))).toHaveLength(
      1,
    );
    const warm = rule({ traits: ["served-warm"] });
    expect(check([warm], item("pasta"))).toEqual([]);
    expect(check([warm], item("pasta", { trickIds: ["food-flask"] }))).toHaveLength(1);
  });
  test("is lifted on its excepted days, such as a birthday, and silent outside its dates", () => {
    const sweets = rule({
      traits: ["sweets"],
      ...{ from: day("2026-01-01"), to: day("2026-06-30"), weekdays: [1, 2, 3, 4, 5] },
      exceptDays: [day("2026-03-12")],
    });
    expect(check([sweets], item("cupcake"), "2026-03-11")).toHaveLength(1);
    expect(check([sweets], item("cupcake"), "2026-03-12")).toEqual([]);
    expect(check([sweets], item("cupcake"), "2026-03-14")).toEqual([]);
    expect(check([sweets], item("cupcake"), "2026-09-01")).toEqual([]);
  });
  test("an allergen of some makes asks for the label, and names it", () => {
    const nuts = rule({ allergens: ["tree-nut", "peanut"] });
    const [finding] = check([nuts], item("granola"));
    expect(finding).toMatchObject({ level: "look" });
    expect(finding?.sentence).toMatch(/Check the label for tree nuts and peanuts: granola/);
  });
  test("says something of every food that the hard filter keeps out, and stops nothing it lets in", () => {
    const rules = [
      rule({ traits: ["sweets", "messy"], allergens: ["milk"] }),
      rule({ name: "No pears", foods: [item("pear").food.id] }),
    ];
    const isAllowed = hardFilter([], rules, day("2026-03-11"));
    for (const one of FOODS) {
      const findings = check(rules, item(one.id));
      expect([one.id, findings.length > 0]).toEqual([one.id, !isAllowed(one)]);
    }
  });
});
