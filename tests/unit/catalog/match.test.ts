import { describe, expect, test } from "vitest";
import { matchFood, prepareFoods, taughtAlias, type Food } from "#lib/catalog/index.ts";
import { referenceFoods } from "#seed/index.ts";
import { describeFigures, labelledPhrases, matchFigures } from "./match-figures.ts";
import { HELD_OUT_PHRASES } from "./match-held-out.published.ts";
import { MORE_TUNING_PHRASES } from "./match-more-tuning.published.ts";
import { TUNING_PHRASES } from "./match-tuning.published.ts";
import { hasSharedFiles, listedFoods, sharedRows } from "./shared-catalogue.ts";

const larder = [
  { name: "apple", aliases: ["whole apple"] },
  { name: "pineapple", aliases: [] },
  { name: "milk", aliases: [] },
  { name: "carrot sticks", aliases: ["carrot", "carrots"] },
  { name: "baby carrots" },
  { name: "hummus", aliases: ["the usual"] },
  { name: "cheddar cheese", aliases: [] },
  { name: "zucchini", aliases: [] },
];

/** The name of the best match in the small larder, or null. */
function best(query: string): string | null {
  return matchFood(query, larder).best?.food.name ?? null;
}

describe("a phrase is matched", () => {
  test.each([
    ["apples", "apple"],
    ["apple, raw, with skin", "apple"],
    ["2 sliced apples", "apple"],
    ["Carrots, baby, raw", "baby carrots"],
    ["carots", "carrot sticks"],
    ["courgettes", "zucchini"],
    ["½ cup grated cheddar", "cheddar cheese"],
    ["the usual", "hummus"],
    ["Milk, reduced fat, fluid, 2% milkfat, with added vitamin A", "milk"],
  ])("%s as %s", (query, name) => {
    expect(best(query)).toBe(name);
  });

  test.each([
    "milk chocolate",
    "apple pie",
    "apple juice",
    "carrot cake",
    "crab apple jelly",
    "leek",
    "onion",
    "grapple",
    "",
    "   ",
    "12",
    "🥕",
  ])("%j as none of them", (query) => {
    const match = matchFood(query, larder);
    expect(match.best).toBeNull();
    expect(match.ranked).toEqual([]);
  });

  test("and says why", () => {
    expect(matchFood("apple", larder).best?.reason).toEqual({ kind: "name" });
    expect(matchFood("The Usual", larder).best?.reason).toEqual({
      kind: "alias",
      alias: "the usual",
    });
    expect(matchFood("pinapple", larder).best?.reason).toEqual({
      kind: "spelling",
      matched: "pineapple",
    });
  });

  test("with its near misses kept apart from what is sure", () => {
    const { ranked, doubtful } = matchFood("carrot", larder);
    expect(ranked.map(({ score }) => score)).toEqual(
      ranked.map(({ score }) => score).sort((left, right) => right - left),
    );
    for (const { score } of doubtful) expect(score).toBeLessThan(ranked.at(-1)?.score ?? 1);
  });

  test("by an alias that a correction taught", () => {
    const carrots = { name: "carrot sticks", aliases: ["carrot"] };
    const alias = taughtAlias("2 bunches of orange swords", carrots);
    expect(alias).toBe("orange swords");
    const taught = [{ ...carrots, aliases: [...carrots.aliases, alias ?? ""] }];
    expect(matchFood("Orange Sword", taught).best?.food.name).toBe("carrot sticks");
    expect(taughtAlias("3 carrots", carrots)).toBeNull();
    expect(taughtAlias("2 cups", carrots)).toBeNull();
  });

  test("to nothing when there are no foods", () => {
    expect(matchFood("apple", []).best).toBeNull();
  });

  test("with an index that is built once for a list", () => {
    expect(prepareFoods(larder)).toBe(prepareFoods(larder));
  });
});

// The floors lie a little under what was measured; the target of the work is 95 % and under 10 %.
describe.skipIf(!hasSharedFiles)("on the 404 foods of the catalogue draft", () => {
  const foods = listedFoods();
  const samples = sharedRows("catalogue/samples/match.csv").map((row) => ({
    phrase: row["query"] ?? "",
    expected: [row["expected"] === "NONE" ? null : (row["expected"] ?? "")],
  }));

  test.each([
    ["samples of the catalogue draft", samples, 0.98, 0.06],
    ["tuning half", labelledPhrases(TUNING_PHRASES), 0.98, 0.02],
    ["more tuning phrases", labelledPhrases(MORE_TUNING_PHRASES), 0.97, 0.02],
    ["held-out half", labelledPhrases(HELD_OUT_PHRASES), 0.95, 0.04],
  ] as const)("the %s keep their figures", (name, labelled, rightLeast, wrongMost) => {
    const figures = matchFigures(labelled, foods);
    console.info(describeFigures(name, figures));
    expect(figures.right / figures.phrases).toBeGreaterThanOrEqual(rightLeast);
    expect(figures.wrongPositives / figures.negatives).toBeLessThanOrEqual(wrongMost);
  });
});

describe("on the reference catalogue of the seed", () => {
  const foods = referenceFoods().map(({ food }) => food);

  test("every name and alias finds its own food", () => {
    const missed = foods.flatMap((food) =>
      [food.name, ...food.aliases].filter(
        (name) => matchFood(name, foods).best?.food.id !== food.id,
      ),
    );
    expect(missed).toEqual([]);
  });

  test("the held-out half keeps its figures, where the seed still has the food it means", () => {
    const isSame = (got: { readonly name: string }, name: string): boolean =>
      foods.some((food) => food.name === got.name && answersTo(food, name));
    const known = labelledPhrases(HELD_OUT_PHRASES).filter(({ expected }) =>
      expected.some((name) => name === null || foods.some((food) => answersTo(food, name))),
    );
    const figures = matchFigures(known, foods, isSame);
    console.info(describeFigures("held-out half on the seed", figures));
    expect(figures.right / figures.phrases).toBeGreaterThanOrEqual(0.9);
    expect(figures.wrongPositives / figures.negatives).toBeLessThanOrEqual(0.04);
  });
});

/** The seed renamed some foods ("tuna canned" is "canned tuna"): the same words in any order will do. */
function answersTo(food: Food, name: string): boolean {
  return [food.name, ...food.aliases].some((own) => bag(own) === bag(name));
}

function bag(name: string): string {
  const words = name.toLowerCase().split(" ");
  return words
    .filter((word) => word !== "cooked")
    .sort()
    .join(" ");
}
