import { describe, expect, test } from "vitest";
import { ALLERGENS, readAllergens, type Allergen } from "#lib/catalog/index.ts";
import { referenceFoods } from "#seed/index.ts";
import { MAJOR_ALLERGENS, majorAllergensOf } from "./major-allergens.ts";
import { hasSharedFiles, sharedRows } from "./shared-catalogue.ts";

const held = (text: string): Allergen[] => readAllergens(text).holds.map((told) => told.allergen);
const asked = (text: string): Allergen[] =>
  readAllergens(text).someMakes.map((told) => told.allergen);

const samples = sharedRows("catalogue/samples/allergen.csv");

/**
 * Dish names and ingredient lists of USDA FNDDS 2.0 and SR28 with the major allergens that follow from
 * FDA's definitions (`../shared/catalogue/samples/allergen.csv`).
 */
describe("ingredient lists and dish names of USDA tables", () => {
  test.skipIf(!hasSharedFiles)(`no major allergen is missed in ${samples.length}`, () => {
    const missed = samples.flatMap((row) =>
      majorAllergensOf(row["expected_us9"] ?? "")
        .filter((tag) => !held(row["text"] ?? "").includes(tag))
        .map((tag) => `${row["text"] ?? ""}: ${tag}`),
    );
    expect(missed).toEqual([]);
  });

  test.skipIf(!hasSharedFiles)("none is told that the table does not know", () => {
    const extra = samples.flatMap((row) => {
      const known = majorAllergensOf(
        `${row["expected_us9"] ?? ""}|${row["may_also_contain_not_scored"] ?? ""}`,
      );
      return held(row["text"] ?? "")
        .filter((tag) => MAJOR_ALLERGENS.has(tag) && !known.includes(tag))
        .map((tag) => `${row["text"] ?? ""}: ${tag}`);
    });
    expect(extra).toEqual([]);
  });
});

test("whatever a name of the reference catalogue speaks of stands on its record", () => {
  const unrecorded = referenceFoods().flatMap(({ food }) =>
    [food.name, ...food.aliases].flatMap((name) =>
      held(name)
        .filter((tag) => ![...food.allergens, ...food.maybeAllergens].includes(tag))
        .map((tag) => `${name}: ${tag}`),
    ),
  );
  expect(unrecorded).toEqual([]);
});

describe("Annex II of Reg. (EU) 1169/2011, a word for each point", () => {
  test.each<readonly [string, Allergen]>([
    ["spelt flakes", "wheat"],
    ["rye", "rye"],
    ["barley malt extract", "barley"],
    ["rolled oats", "oats"],
    ["prawns", "crustacean"],
    ["egg white powder", "egg"],
    ["anchovies", "fish"],
    ["peanuts", "peanut"],
    ["soybeans", "soy"],
    ["lactose", "milk"],
    ["hazelnuts", "tree-nut"],
    ["celeriac", "celery"],
    ["mustard", "mustard"],
    ["sesame seeds", "sesame"],
    ["sulphur dioxide", "sulphites"],
    ["lupin flour", "lupin"],
    ["squid", "mollusc"],
  ])("%s is %s", (text, tag) => {
    expect(held(`water, ${text}, salt`)).toContain(tag);
  });
});

/** FDA, Q&A Guidance on food allergen labelling, Edition 5 (January 2025): twelve; from memory of the list. */
test.each([
  ..."almond|black walnut|Brazil nut|California walnut|cashew|filbert|hazelnut".split("|"),
  ..."heartnut|macadamia nut|pecan|pine nut|pistachio|English walnut".split("|"),
])("%s is a tree nut and no peanut", (nut) => {
  expect(held(`${nut}s, roasted`)).toEqual(["tree-nut"]);
});

/** Words that hold an allergen's name without the allergen (common practice, no source). */
test.each<readonly [string, readonly Allergen[]]>([
  ["coconut milk", ["coconut"]],
  ["peanut butter", ["peanut"]],
  ["almond milk", ["tree-nut"]],
  ["cocoa butter", []],
  ["butternut squash", []],
  ["butter lettuce", []],
  ["eggplant", []],
  ["nutmeg", []],
  ["water chestnuts", []],
  ["rice noodles", []],
  ["buckwheat", []],
  ["oyster mushrooms", []],
  ["cream of tartar", []],
  ["egg noodles", ["egg", "wheat"]],
  ["Nuts, chestnuts, european, roasted", []],
])("“%s” holds %j", (text, tags) => {
  expect(held(text)).toEqual(tags);
});

describe("what a maker says is missing is asked, not taken as gone", () => {
  test.each<readonly [string, Allergen]>([
    ["egg-free mayonnaise", "egg"],
    ["vegan cheese", "milk"],
    ["nut-free bar", "tree-nut"],
    ["gluten-free bread", "wheat"],
    ["free from milk: chocolate milk", "milk"],
    ["cookies without egg or eggs", "egg"],
  ])("%s: %s", (text, tag) => {
    expect(held(text)).not.toContain(tag);
    expect(asked(text)).toContain(tag);
  });

  test("a warning reaches to the end of its sentence and no further", () => {
    const text = "Rice, salt. May contain traces of nuts, milk and sesame. Wheat flour.";
    expect(held(text)).toEqual(["wheat"]);
    expect(asked(text)).toEqual(["milk", "tree-nut", "peanut", "sesame"]);
  });
});

test("the words that told it are given back as typed", () => {
  expect(readAllergens("Crème fraîche").holds).toEqual([
    { allergen: "milk", words: "creme fraiche" },
  ]);
});

test("every tag of the vocabulary can be told", () => {
  const told = new Set(
    "milk, egg, cod, crab, clam, pecan, peanut, wheat, rye, barley, oat, soy, sesame, celery, mustard, sulphite, lupin, coconut"
      .split(", ")
      .flatMap(held),
  );
  expect(ALLERGENS.filter((tag) => !told.has(tag))).toEqual([]);
});
