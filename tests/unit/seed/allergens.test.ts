import { describe, expect, test } from "vitest";
import { type Allergen, type Food } from "#lib/catalog/index.ts";
import { referenceFoods } from "#seed/index.ts";
import { majorAllergensOf } from "../catalog/major-allergens.ts";
import {
  FDA_NO_TREE_NUTS,
  FDA_TREE_NUTS,
  NAMED,
  NOT_MEANT,
  SAMPLES,
} from "./allergens.published.ts";
import { referenceFood } from "./reference-food.ts";
import { readShared, type SharedRow } from "./shared-data.ts";

const foods = referenceFoods().map(({ food }) => food);
const told = (food: Food): readonly Allergen[] => [...food.allergens, ...food.maybeAllergens];

/** Foods with a name or alias that has the word or phrase, in the singular or plural. */
function named(phrase: string): readonly Food[] {
  const pattern = new RegExp(`\\b${phrase}s?\\b`, "i");
  return foods.filter(({ name, aliases }) => [name, ...aliases].some((text) => pattern.test(text)));
}

describe("allergens of the FDA and EU lists", () => {
  test.each(FDA_TREE_NUTS)("a food named after %s carries tree nuts, not peanuts alone", (nut) => {
    const hits = named(nut);
    expect(hits.length).toBeGreaterThan(0);
    for (const food of hits) expect(food.allergens, food.id).toContain("tree-nut");
  });

  test.each(FDA_NO_TREE_NUTS)("%s is no tree nut since January 2025", (word) => {
    const hits = named(word);
    expect(hits.length).toBeGreaterThan(0);
    for (const food of hits) expect(food.allergens, food.id).not.toContain("tree-nut");
  });

  test.each(NAMED)("%s is told of every food named after it: %j", (tag, words) => {
    const excused = new Set(NOT_MEANT.flatMap(([id, not]) => (not === tag ? [id] : [])));
    expect(words.filter((word) => named(word).length === 0)).toEqual([]);
    const untold = words
      .flatMap((word) => named(word))
      .filter((food) => !excused.has(food.id) && !food.allergens.includes(tag));
    expect(untold.map((food) => food.id)).toEqual([]);
  });

  test("an excuse is one only while the food lacks the tag", () => {
    for (const [id, tag] of NOT_MEANT) expect(referenceFood(id).allergens, id).not.toContain(tag);
  });

  test("no allergen is both told as contained and as maybe", () => {
    const both = foods.filter(({ allergens, maybeAllergens }) =>
      allergens.some((tag) => maybeAllergens.includes(tag)),
    );
    expect(both.map((food) => food.id)).toEqual([]);
  });

  test("every wheat bread and roll asks to check the label for sesame and soy", () => {
    const families = new Set(["sandwich-bread", "flatbread", "bread-roll", "bagel"]);
    for (const food of foods.filter(({ family }) => families.has(family))) {
      expect(food.maybeAllergens, food.id).toEqual(expect.arrayContaining(["soy", "sesame"]));
    }
  });

  test("sulphites are told of sulphured apricots, asked of every other dried fruit", () => {
    expect(referenceFood("dried-apricots").allergens).toContain("sulphites");
    const dried = foods.filter(({ group, form }) => group === "fruit" && form === "dried-sticky");
    expect(dried.length).toBeGreaterThan(8);
    for (const food of dried) expect(told(food), food.id).toContain("sulphites");
  });

  test("the trait nuts stands on every food that contains tree nuts or peanuts", () => {
    const nutty = foods.filter(({ allergens }) =>
      allergens.some((tag) => tag === "tree-nut" || tag === "peanut"),
    );
    expect(nutty.filter(({ traits }) => !traits.includes("nuts"))).toEqual([]);
    const traited = foods.filter(({ traits }) => traits.includes("nuts"));
    expect(traited.map(({ id }) => id).sort()).toEqual(nutty.map(({ id }) => id).sort());
  });
});

const missed = (food: Food, expected: readonly Allergen[], kept: readonly Allergen[]): string[] =>
  expected.filter((tag) => !kept.includes(tag)).map((tag) => `${food.id}: ${tag}`);

const samples = readShared("catalogue/samples/allergen.csv");
const draft = readShared("catalogue/catalogue.csv");
/** Foods of the draft with a derivation: 260 agree with the definition, 5 differ. */
const DERIVED = 265;
const leftOut = (rows: readonly SharedRow[] | undefined, count: number): string =>
  rows ? "" : ` (left out: ${count} checks, ../shared is not there)`;

test.skipIf(!samples)(
  `no major allergen of a labelled sample is missed, in ${SAMPLES.length}${leftOut(samples, SAMPLES.length)}`,
  () => {
    const asked: string[] = [];
    for (const [begins, id] of SAMPLES) {
      const row = samples?.find(({ text = "" }) => text.startsWith(begins));
      const food = referenceFood(id);
      const expected = majorAllergensOf(row?.["expected_us9"] ?? "");
      expect(row, begins).toBeDefined();
      expect(missed(food, expected, told(food)), begins).toEqual([]);
      asked.push(...missed(food, expected, food.allergens));
    }
    // Told as "check the label" only, since not every make holds them:
    expect(asked).toEqual(["scrambled-egg: milk", "breadsticks: sesame", "brownie: tree-nut"]);
  },
);

test.skipIf(!draft)(
  `no major allergen of a USDA FNDDS 2.0 recipe is missed, in ${DERIVED}${leftOut(draft, DERIVED)}`,
  () => {
    const asked: string[] = [];
    let checked = 0;
    for (const row of draft ?? []) {
      const recipe = /FNDDS 2\.0 recipe gives (.*)$/.exec(row["src_allergens"] ?? "")?.[1];
      const derived = row["src_allergens"]?.includes("agrees with FNDDS") === true;
      if (!recipe && !derived) continue;
      checked += 1;
      const food = foods.find(({ name, aliases }) =>
        [name, ...aliases].includes(row["name"] ?? ""),
      );
      if (!food) throw new Error(`No food for ${row["name"] ?? "a row"}.`);
      const expected = majorAllergensOf(recipe ?? row["us_allergens"] ?? "");
      expect(missed(food, expected, told(food))).toEqual([]);
      asked.push(...missed(food, expected, food.allergens));
    }
    expect(checked).toBe(DERIVED);
    expect(asked).toEqual(["focaccia: egg", "brownie: tree-nut"]);
  },
);
