import { describe, expect, test } from "vitest";
import {
  learnMinutes,
  listSteps,
  PACKING,
  packMinutes,
  stepsOfFood,
  type KitchenItem,
} from "#lib/kitchen/index.ts";
import { referenceFoods, referenceTricks } from "#seed/index.ts";

const foods = new Map<string, KitchenItem["food"]>(
  referenceFoods().map(({ food }) => [food.id, food]),
);
const tricks = new Map<string, KitchenItem["tricks"][number]>(
  referenceTricks().map((trick) => [trick.id, trick]),
);

function item(foodId: string, ...trickIds: string[]): KitchenItem {
  const food = foods.get(foodId);
  if (!food) throw new Error(`no food ${foodId}`);
  return {
    food,
    tricks: trickIds.flatMap((id) => {
      const trick = tricks.get(id);
      return trick ? [trick] : [];
    }),
  };
}
const never = () => [];
const listed = (items: KitchenItem[], tins = 2) => listSteps(items, tins, never);

describe("minutes are learned", () => {
  // (3 · usual + sum) ÷ (3 + n), by hand.
  test.each([
    { usual: 6, recorded: [], minutes: 6, why: "nothing recorded: the usual" },
    { usual: 6, recorded: [12], minutes: 8, why: "(18 + 12) ÷ 4 = 7.5" },
    { usual: 6, recorded: [12, 12, 12], minutes: 9, why: "(18 + 36) ÷ 6" },
    { usual: 2, recorded: [0, 0, 0, 0, 0, 0, 0, 0, 0], minutes: 1, why: "never below one" },
  ])("$why", ({ usual, recorded, minutes }) => {
    expect(learnMinutes(usual, recorded)).toEqual({ minutes, recordings: recorded.length });
  });

  test("from the latest ten only, so that a slow start is forgotten", () => {
    const slowLongAgo = [...Array<number>(10).fill(4), ...Array<number>(30).fill(40)];
    expect(learnMinutes(4, slowLongAgo)).toEqual({ minutes: 4, recordings: 10 });
  });

  test("by food and by trick, and for the packing", () => {
    const recorded = (foodId: string | null, name: string): number[] =>
      name === "trick:star-cutter" && foodId === "cucumber-slices"
        ? [8, 8, 8]
        : name === PACKING
          ? [20, 20, 20]
          : [];
    const steps = listSteps([item("cucumber-slices", "star-cutter")], 2, recorded);
    const star = steps.find(({ kind }) => kind === "trick");
    expect(star).toMatchObject({ minutes: 5, recordings: 3 });
    expect(steps.at(-1)).toMatchObject({ id: PACKING, minutes: 12, recordings: 3 });
  });
});

describe("the steps of a lunch", () => {
  test("are each food's own in order, then its tricks, then the packing after all", () => {
    const steps = listed([item("cucumber-slices", "star-cutter"), item("raisins")]);
    expect(steps.map(({ id }) => id)).toEqual([
      "cucumber-slices/Wash and slice",
      "cucumber-slices/trick:star-cutter",
      "ice packs/Put into the freezer",
      "ice packs/Put into the bags",
      "pack",
    ]);
    expect(steps[1]?.after).toEqual(["cucumber-slices/Wash and slice"]);
    expect(steps.at(-1)).toMatchObject({
      minutes: packMinutes(2, 2),
      after: steps.slice(0, -1).map(({ id }) => id),
    });
  });

  test("of one food in two places are done once", () => {
    const steps = listed([item("cucumber-slices"), item("cucumber-slices", "star-cutter")]);
    expect(steps.map(({ id }) => id)).toEqual([
      "cucumber-slices/Wash and slice",
      "cucumber-slices/trick:star-cutter",
      "ice packs/Put into the freezer",
      "ice packs/Put into the bags",
      "pack",
    ]);
  });

  test("warm the flask while the soup heats, and cut before it is hot", () => {
    const steps = listed([item("vegetable-soup", "dice", "food-flask")]);
    const [dice, flask, heat, fill] = steps;
    expect(steps.map(({ name }) => name)).toEqual([
      "Make the dice",
      "Preheat the food flask with boiling water",
      "Heat until steaming all through (74 °C)",
      "Fill the food flask and close it",
      "Pack, on camera",
    ]);
    expect(flask?.after).toEqual([dice?.id]);
    expect(heat?.after).toEqual([dice?.id]);
    expect(fill?.after).toEqual([flask?.id, heat?.id]);
  });

  test("put tricks in the morning, and what browns not long before the packing", () => {
    const [, trick] = listed([item("apple", "fan-of-slices")]);
    expect(trick).toMatchObject({ earliest: "morning", holdMinutesMax: 240 });
  });

  test("freeze ice packs only for what must stay cold", () => {
    const names = listed([item("raisins"), item("rice-cakes")]).map(({ about }) => about);
    expect(names).toEqual(["the tins"]);
  });

  test("of nothing are none", () => {
    expect(listed([])).toEqual([]);
  });
});

test("what is bought ready asks for nothing, what is not for the usual of its kind", () => {
  const names = (id: string) => stepsOfFood(item(id).food).map(({ name }) => name);
  expect(names("rice-cakes")).toEqual([]);
  expect(names("banana")).toEqual([]);
  expect(names("dinner-roll")).toEqual(["Split"]);
  expect(names("rice-pudding")).toEqual(["Spoon into a lidded pot"]);
  expect(names("provolone")).toEqual(["Cut to fit the tin"]);
});

test("every reference food makes steps that the planner takes: whole minutes, known order", () => {
  for (const { food } of referenceFoods()) {
    const steps = listed([{ food, tricks: [] }]);
    const ids = new Set(steps.map(({ id }) => id));
    expect(ids.size, food.id).toBe(steps.length);
    for (const { minutes, after } of steps) {
      expect(Number.isInteger(minutes), food.id).toBe(true);
      expect(
        after.every((id) => ids.has(id)),
        food.id,
      ).toBe(true);
    }
  }
});
