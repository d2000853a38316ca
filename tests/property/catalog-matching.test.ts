import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { matchFood, parseQuickLine, readAllergens, readQuantity } from "#lib/catalog/index.ts";
import { referenceFoods, referenceTricks } from "#seed/index.ts";

const foods = referenceFoods().map(({ food }) => food);
const anyText = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.string({ unit: "grapheme" }),
  // Text made of the pieces that the reading looks for.
  fc
    .array(
      fc.constantFrom(
        "1",
        "½",
        "1/0",
        "cup",
        ",",
        "(",
        ")",
        "with",
        "or",
        "apple",
        "s",
        "-",
        ";",
        "x",
      ),
      { maxLength: 12 },
    )
    .map((pieces) => pieces.join(" ")),
);

describe("whatever is typed", () => {
  test("matching does not throw, scores lie in (0, 1] and fall", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { best, ranked } = matchFood(text, foods);
        expect(best).toBe(ranked[0] ?? null);
        for (const [index, { score }] of ranked.entries()) {
          expect(score).toBeGreaterThan(0);
          expect(score).toBeLessThanOrEqual(1);
          expect(score).toBeLessThanOrEqual(ranked[index - 1]?.score ?? 1);
        }
      }),
    );
  });

  test("matching does not throw on any names a user may give, and finds a food by its name", () => {
    const name = fc.string({ minLength: 1, maxLength: 20, unit: "grapheme" });
    fc.assert(
      fc.property(fc.array(name, { minLength: 1, maxLength: 6 }), anyText, (names, text) => {
        const own = names.map((each) => ({ name: each, aliases: [] }));
        matchFood(text, own);
        for (const { name: each } of own.filter((food) => /[\p{L}\d]/u.test(food.name))) {
          expect(matchFood(each, own).best).not.toBeNull();
        }
      }),
    );
  });

  test("a quick line does not throw and gives amounts above zero", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { quantity } of parseQuickLine(text, foods, referenceTricks())) {
          expect(quantity.amount).toBeGreaterThan(0);
        }
      }),
    );
  });

  test("reading a quantity does not throw, and a range goes up", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { quantity } = readQuantity(text);
        if (quantity?.amountMax) expect(quantity.amountMax).toBeGreaterThan(quantity.amount);
        if (quantity) expect(quantity.amount).toBeGreaterThan(0);
      }),
    );
  });
});

test("reading a label never throws, and more words never take an allergen away", () => {
  const words = fc.constantFrom(
    ...["milk", "egg", "free", "no", "vegan", "gluten", "may contain", "nuts", "coconut", ",", "."],
  );
  const label = fc.oneof(
    anyText,
    fc.array(words, { maxLength: 10 }).map((all) => all.join(" ")),
  );
  fc.assert(
    fc.property(label, label, (one, other) => {
      const all = (text: string): string[] => {
        const { holds, someMakes } = readAllergens(text);
        return [...holds, ...someMakes].map(({ allergen }) => allergen);
      };
      const both = all(`${one}\n${other}`);
      expect(both).toEqual(expect.arrayContaining([...all(one), ...all(other)]));
    }),
  );
});
