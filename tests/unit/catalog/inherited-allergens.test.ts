import fc from "fast-check";
import { expect, test } from "vitest";
import { ALLERGENS, inheritedAllergens, type Allergen } from "#lib/catalog/index.ts";
import { checkLunch } from "#lib/safety/index.ts";
import { child, FOODS, item, lunch } from "../safety/box.ts";

const said = fc.record({
  allergens: fc.subarray([...ALLERGENS]),
  maybeAllergens: fc.subarray([...ALLERGENS]),
});

test("a product names all that its food holds and all that its label adds, each once, whatever the label", () => {
  fc.assert(
    fc.property(fc.constantFrom(...FOODS), said, (food, label) => {
      const { allergens, maybeAllergens } = inheritedAllergens(food, label);
      expect(new Set(allergens)).toEqual(new Set([...food.allergens, ...label.allergens]));
      const spoken = [...food.maybeAllergens, ...label.maybeAllergens];
      expect(new Set([...allergens, ...maybeAllergens])).toEqual(
        new Set([...allergens, ...spoken]),
      );
      expect(allergens.filter((one) => maybeAllergens.includes(one))).toEqual([]);
    }),
  );
});

test("a food without a product says what the food says", () => {
  for (const food of FOODS) {
    const { allergens, maybeAllergens } = inheritedAllergens(food);
    expect(new Set(allergens)).toEqual(new Set(food.allergens));
    expect(new Set(maybeAllergens)).toEqual(new Set(food.maybeAllergens));
  }
});

/** What an item of a food, sold with a label that says nothing, tells a child allergic to one thing. */
function told(foodId: string, allergen: Allergen): readonly { level: string; text: string }[] {
  const product = { name: "plain pack", allergens: [], maybeAllergens: [], traits: [] };
  const findings = checkLunch(lunch(item(foodId, { product })), {
    children: [child({ avoidances: [{ allergen, severity: "allergy" }] })],
    ...{ rules: [], journey: null, scheme: "off" },
  });
  return findings
    .filter(({ kind }) => kind === "allergen")
    .map(({ level, sentence, remedy }) => ({ level, text: `${sentence} ${remedy}` }));
}

test("from food to product to item no allergen of the catalogue is lost: 'maybe' asks for the label", () => {
  let [certain, possible] = [0, 0];
  for (const food of FOODS) {
    for (const allergen of ALLERGENS) {
      const findings = told(food.id, allergen);
      if (food.allergens.includes(allergen)) {
        certain += 1;
        expect(
          findings.map(({ level }) => level),
          `${food.id} ${allergen}`,
        ).toContain("stop");
      } else if (food.maybeAllergens.includes(allergen)) {
        possible += 1;
        expect(findings.length, `${food.id} ${allergen}`).toBeGreaterThan(0);
        expect(findings.map(({ text }) => text).join(" ")).toMatch(/label/i);
      } else {
        const levels = findings.map(({ level }) => level);
        expect(levels, `${food.id} ${allergen}`).not.toContain("stop");
      }
    }
  }
  // Stated so that a catalogue that lost its tags could not pass unseen.
  expect(certain).toBeGreaterThan(250);
  expect(possible).toBeGreaterThan(300);
  console.log(
    `${FOODS.length} foods: ${certain} certain and ${possible} possible allergens, none lost on the way`,
  );
});
