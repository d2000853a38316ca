import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { ALLERGENS, type Allergen, type Food } from "#lib/catalog/index.ts";
import { isAllowed, SchoolRule, type Avoidance } from "#lib/safety/index.ts";
import { referenceCatalogue } from "#seed/index.ts";

const FOODS = referenceCatalogue().foods.map(({ food }) => food);
const MONDAY = day("2026-03-02");
const child = (...avoidances: Avoidance[]) => ({ id: "b", name: "Biscuit", avoidances });
const plain = FOODS[0] as Food;
const made = (with_: Partial<Food>): Food => ({
  ...plain,
  allergens: [],
  maybeAllergens: [],
  traits: [],
  ...with_,
});
const noCans = SchoolRule.parse({
  name: "No cans",
  traits: ["in-a-can"],
  allergens: [],
  foods: [],
  from: "2026-03-01",
  to: "2026-03-31",
  weekdays: [1, 2, 3, 4, 5],
  exceptDays: ["2026-03-03"],
});

describe("the hard filter", () => {
  test.each(ALLERGENS)("keeps %s from a child who must not have it", (allergen: Allergen) => {
    const food = made({ allergens: [allergen] });
    for (const severity of ["severe", "allergy", "avoid"] as const)
      expect(isAllowed(food, [child({ allergen, severity })], [], MONDAY)).toBe(false);
    expect(isAllowed(food, [child({ allergen, severity: "dislike" })], [], MONDAY)).toBe(true);
    expect(isAllowed(made({}), [child({ allergen, severity: "severe" })], [], MONDAY)).toBe(true);
  });
  test("counts an allergen of some makes for an allergy, not for a wish", () => {
    const food = made({ maybeAllergens: ["milk"] });
    expect(isAllowed(food, [child({ allergen: "milk", severity: "allergy" })], [], MONDAY)).toBe(
      false,
    );
    expect(isAllowed(food, [child({ allergen: "milk", severity: "avoid" })], [], MONDAY)).toBe(
      true,
    );
  });
  test("adding an allergen never admits a food", () => {
    const children = [child({ allergen: "egg", severity: "allergy" })];
    for (const food of FOODS)
      for (const allergen of ALLERGENS)
        if (!isAllowed(food, children, [], MONDAY))
          expect(
            isAllowed({ ...food, allergens: [...food.allergens, allergen] }, children, [], MONDAY),
          ).toBe(false);
  });
  test.each([
    ["2026-03-02", false],
    ["2026-03-03", true],
    ["2026-03-07", true],
    ["2026-04-01", true],
    ["2026-02-27", true],
  ])("a rule holds on its days only: %s", (on, allowed) => {
    expect(isAllowed(made({ traits: ["in-a-can"] }), [], [noCans], day(on))).toBe(allowed);
    expect(isAllowed(made({}), [], [noCans], day(on))).toBe(true);
  });
});
