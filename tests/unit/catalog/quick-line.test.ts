import { describe, expect, test } from "vitest";
import { parseQuickLine, standInsFor, likelyPart, suggestFoods } from "#lib/catalog/index.ts";
import { referenceFoods, referenceTricks } from "#seed/index.ts";

const foods = referenceFoods().map(({ food }) => food);
const tricks = referenceTricks();

/** Name, amount and unit of each item of a line. */
function items(line: string): (string | number | null)[][] {
  return parseQuickLine(line, foods, tricks).map(({ food, quantity }) => [
    food?.food.name ?? null,
    quantity.amount,
    quantity.unit,
  ]);
}

describe("a lunch in one line", () => {
  test("is read item by item, with what is not known left open", () => {
    const line = "oat squares; ¼ cup hummus + cucumber ribbons; 1 clementine each; water";
    const read = parseQuickLine(line, foods, tricks);
    expect(read.map(({ food }) => food?.food.id ?? null)).toEqual([
      null,
      "hummus",
      "cucumber-slices",
      "clementine",
      "water",
    ]);
    expect(read[0]?.doubts.map(({ kind }) => kind)).toContain("no-food");
    expect(read[1]).toMatchObject({ quantity: { amount: 0.25, unit: "cup" }, part: "dip" });
    expect(read[1]?.grams).toBeCloseTo(60, 6);
    expect(read[2]?.trickIds).toEqual(["ribbons"]);
    expect(read.map(({ isPerChild }) => isPerChild)).toEqual([false, false, false, true, false]);
    expect(read[4]?.part).toBe("drink");
  });

  test.each([
    [
      "apple slices, string cheese, 3 strawberries",
      ["apple slices", "string cheese", "strawberries"],
    ],
    ["celery sticks with peanut butter", ["celery sticks", "peanut butter"]],
    ["mac and cheese", ["macaroni and cheese"]],
    ["Beans, string, ½ cup", ["green beans"]],
    ["baby carrots, half a cup, with hummus", ["baby carrots", "hummus"]],
  ])("parts %s rightly", (line, names) => {
    expect(items(line).map(([name]) => name)).toEqual(names);
  });

  test("keeps an amount after a comma with its item, and counts by the food's own unit", () => {
    expect(items("baby carrots, half a cup")).toEqual([["baby carrots", 0.5, "cup"]]);
    expect(items("10 cucumber slices")).toEqual([["cucumber slices", 10, "slice"]]);
  });

  test("finds tricks by shape and by name, not in the food's own name", () => {
    const [cheese, melon, sticks] = parseQuickLine(
      "star-shaped cheddar cheese 1 oz; leaf picks with melon balls; fish sticks",
      foods,
      tricks,
    );
    expect(cheese).toMatchObject({
      trickIds: ["star-cutter"],
      quantity: { amount: 1, unit: "oz" },
    });
    expect(melon?.trickIds).toContain("leaf-picks");
    expect(sticks?.food?.food.name).toBe("fish sticks");
    expect(sticks?.trickIds).toEqual([]);
  });

  test("doubts a misspelt food and an amount that cannot be weighed", () => {
    const [first, second] = parseQuickLine("2 bananna; 3 bags hummus", foods, tricks);
    expect(first?.doubts).toContainEqual({ kind: "spelling", matched: "banana" });
    expect(second?.grams).toBeNull();
    expect(second?.doubts.map(({ kind }) => kind)).toContain("not-weighed");
  });
});

describe("a part", () => {
  test("is the food's first that the lunch still lacks", () => {
    expect(likelyPart({ parts: ["protein", "main"] })).toBe("protein");
    expect(likelyPart({ parts: ["protein", "main"] }, ["protein"])).toBe("main");
    expect(likelyPart({ parts: ["protein"] }, ["protein"])).toBe("protein");
  });
});

describe("stand-ins", () => {
  const peanutButter = foods.find(({ name }) => name === "peanut butter");
  const found = peanutButter ? standInsFor(peanutButter, foods, "dip") : [];

  test("can play the part, are kin or of the same group, and are never the food itself", () => {
    expect(found.length).toBeGreaterThan(0);
    for (const { food, isSameFamily, isSameGroup } of found) {
      expect(food.parts).toContain("dip");
      expect(isSameFamily || isSameGroup).toBe(true);
      expect(food.id).not.toBe(peanutButter?.id);
    }
  });

  test("name every allergen they bring, and come first when they bring none", () => {
    const tahini = found.find(({ food }) => food.name === "tahini");
    expect(tahini?.newAllergens).toContain("sesame");
    const brings = found.map(({ newAllergens }) => newAllergens.length > 0);
    expect(brings).toEqual([...brings].sort());
  });
});

describe("suggestions by keystroke", () => {
  test("take every typed word as the start of a word", () => {
    expect(suggestFoods("bab ca", foods)[0]?.name).toBe("baby carrots");
    expect(suggestFoods("strawb", foods)[0]?.name).toBe("strawberries");
    expect(suggestFoods("", foods)).toEqual([]);
  });
});
