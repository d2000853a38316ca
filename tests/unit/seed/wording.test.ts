import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import {
  referenceFamilies,
  referenceFoods,
  referenceThemes,
  referenceTricks,
} from "#seed/index.ts";
import { TRADE_NAME_DIGESTS } from "./trade-name-digests.ts";

const texts: readonly string[] = [
  ...referenceFoods().flatMap(({ food }) => [
    food.name,
    ...food.aliases,
    ...Object.keys(food.unitWeights),
    ...food.prepSteps.map((step) => step.name),
  ]),
  ...referenceFamilies().map(({ name }) => name),
  ...referenceTricks().map(({ name }) => name),
  ...referenceThemes().flatMap(({ name, note }) => [name, note]),
];
const names = referenceFoods().flatMap(({ food }) => [food.name, ...food.aliases]);
const digest = (word: string): string =>
  createHash("sha256").update(word).digest("hex").slice(0, 12);

/** Words of food names that are rightly written with a capital: places, kinds of cheese, initials. */
const PROPER = new Set(
  (
    "American Asian BBQ Belgian Caesar Chinese Colby Emmentaler English French GF Gouda Great Greek " +
    "Italian Jack Japanese Mexican Monterey Northern Parmesan Swiss UHT"
  ).split(" "),
);

describe("the words of the catalogue", () => {
  test("hold no trade name", () => {
    const words = new Set(texts.flatMap((text) => text.toLowerCase().match(/[a-z]+/g) ?? []));
    expect([...words].filter((word) => TRADE_NAME_DIGESTS.has(digest(word)))).toEqual([]);
    expect(digest("word"), "the digests are made this way").toBe("98c1eb4ee934");
  });

  test("hold no capital that nobody has reviewed, and no trade-mark sign", () => {
    const capitals = names.flatMap((name) => name.match(/\b[A-Z][A-Za-z]*/g) ?? []);
    expect([...new Set(capitals)].filter((word) => !PROPER.has(word))).toEqual([]);
    expect(texts.filter((text) => /[®™©]/u.test(text))).toEqual([]);
  });

  test("promise nothing about safety, allergens or health", () => {
    const promise =
      /\b(safe|safely|healthy|hypoallergenic)\b|(allergen|nut|dairy|egg|soy)[- ]free/i;
    expect(texts.filter((text) => promise.test(text))).toEqual([]);
  });

  test("are short enough for a list on a phone", () => {
    const long = referenceFoods().filter(({ food }) => food.name.length > 28);
    expect(long.map(({ food }) => food.name)).toEqual([]);
  });
});
