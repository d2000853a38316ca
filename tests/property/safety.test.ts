import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ALLERGENS, FORMS, TRAITS, type Allergen } from "#lib/catalog/index.ts";
import {
  checkLunch,
  hardFilter,
  SchoolRule,
  Severity,
  UNLIMITED_RULE,
  type BoxChild,
  type BoxItem,
  type CheckGround,
} from "#lib/safety/index.ts";
import { child, FOODS, lunch } from "#tests/unit/safety/box.ts";

const allergens = fc.uniqueArray(fc.constantFrom(...ALLERGENS), { maxLength: 3 });
const boxItem: fc.Arbitrary<BoxItem> = fc
  .record({
    index: fc.nat(FOODS.length - 1),
    allergens,
    maybeAllergens: allergens,
    traits: fc.uniqueArray(fc.constantFrom(...TRAITS), { maxLength: 3 }),
    form: fc.constantFrom(...FORMS),
    notFor: fc.subarray(["pepper", "biscuit"]),
    product: fc.option(
      fc.record({
        name: fc.constant("House make"),
        allergens,
        maybeAllergens: allergens,
        traits: fc.constant([]),
      }),
    ),
  })
  .map(({ index, notFor, product, ...marks }) => {
    const food = FOODS[index];
    if (!food) throw new Error("The catalogue is shorter than the index.");
    return {
      ...{ id: food.id, food: { ...food, ...marks }, part: food.parts[0] ?? "extra" },
      ...{
        grams: food.servingGrams,
        trickIds: [],
        notFor,
        product,
        recall: null,
        maybeRecalled: null,
      },
    };
  });
const boxChild = (id: string): fc.Arbitrary<BoxChild> =>
  fc
    .record({
      ageMonths: fc.option(fc.integer({ min: 6, max: 150 })),
      avoidances: fc.array(
        fc.record({
          allergen: fc.constantFrom(...ALLERGENS),
          severity: fc.constantFrom(...Severity.options),
        }),
        { maxLength: 3 },
      ),
    })
    .map((drawn) => child({ id, name: id, ...drawn }));
const ground: fc.Arbitrary<CheckGround> = fc.record({
  journey: fc.constant(null),
  scheme: fc.constant("off" as const),
  children: fc.tuple(boxChild("pepper"), boxChild("biscuit")),
  rules: fc
    .array(fc.record({ traits: fc.subarray([...TRAITS], { maxLength: 3 }), allergens }), {
      maxLength: 2,
    })
    .map((rules) =>
      rules.map((rule, index) =>
        SchoolRule.parse({ ...UNLIMITED_RULE, ...rule, name: `Rule ${index + 1}` }),
      ),
    ),
});
const items = fc.uniqueArray(boxItem, { minLength: 1, maxLength: 5, selector: ({ id }) => id });

/** Who or what speaks against which item, without level and words. */
function said(held: readonly BoxItem[], on: CheckGround): Set<string> {
  return new Set(
    checkLunch(lunch(...held), on).flatMap(({ key, kind, itemIds }) => {
      const about = key
        .split(":")
        .slice(1, kind === "recall" ? 1 : -1)
        .join(":");
      return itemIds.map((id) => `${kind} ${about} ${id}`);
    }),
  );
}

describe("more on record never means less said", () => {
  test("adding an allergen to a food or a label never takes a warning away", () => {
    fc.assert(
      fc.property(
        items,
        ground,
        fc.nat(4),
        fc.constantFrom(...ALLERGENS),
        fc.constantFrom("holds", "maybe", "label", "label-maybe"),
        (held, on, place, allergen, where) => {
          const index = place % held.length;
          const more = held.map((one, at) =>
            at === index ? withAllergen(one, allergen, where) : one,
          );
          const after = said(more, on);
          for (const warning of said(held, on)) {
            // "Holds" takes the place of "keep apart" only when the item is the child's own: never here.
            expect([...after]).toContain(warning);
          }
        },
      ),
      { numRuns: 400 },
    );
  });
  test("adding a child, an avoidance or a rule never takes a warning away", () => {
    fc.assert(
      fc.property(items, ground, ground, (held, on, other) => {
        const [pepper, biscuit] = on.children;
        const [more] = other.children;
        if (!pepper || !biscuit || !more) return;
        const wider: CheckGround = {
          children: [
            { ...pepper, avoidances: [...pepper.avoidances, ...more.avoidances] },
            biscuit,
            { ...more, id: "third", name: "third" },
          ],
          journey: null,
          scheme: "off",
          rules: [
            ...on.rules,
            ...other.rules.map((rule) => ({ ...rule, name: `other ${rule.name}` })),
          ],
        };
        const after = said(held, wider);
        for (const warning of said(held, on)) expect([...after]).toContain(warning);
      }),
      { numRuns: 300 },
    );
  });
  test("every food that the hard filter keeps from a child is spoken of", () => {
    let kept = 0;
    fc.assert(
      fc.property(items, ground, (held, on) => {
        const isAllowed = hardFilter(on.children, on.rules, lunch().date);
        for (const one of held.map((each) => ({ ...each, notFor: [], product: null }))) {
          if (isAllowed(one.food)) continue;
          kept += 1;
          expect(checkLunch(lunch(one), on).some(({ level }) => level !== "note")).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
    expect(kept).toBeGreaterThan(50);
  });
});

function withAllergen(one: BoxItem, allergen: Allergen, where: string): BoxItem {
  const { food, product } = one;
  switch (where) {
    case "holds":
      return { ...one, food: { ...food, allergens: [...food.allergens, allergen] } };
    case "maybe":
      return { ...one, food: { ...food, maybeAllergens: [...food.maybeAllergens, allergen] } };
    case "label":
      return product
        ? { ...one, product: { ...product, allergens: [...product.allergens, allergen] } }
        : one;
    default:
      return product
        ? { ...one, product: { ...product, maybeAllergens: [...product.maybeAllergens, allergen] } }
        : one;
  }
}
