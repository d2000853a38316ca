import { expect, test } from "vitest";
import { readFoods } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { FoodInput, type FoodFields } from "#lib/use-cases/larder/food.input.ts";
import { fieldsOf } from "#lib/use-cases/larder/food-fields.ts";
import { loadNewFood } from "#lib/use-cases/larder/load-new-food.ts";
import { retire } from "#lib/use-cases/larder/retire.ts";
import { saveFood } from "#lib/use-cases/larder/save-food.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function fieldsFor({ db }: Context, id: string): Promise<FoodFields> {
  const food = (await readFoods(db)).find((one) => one.id === id);
  const row = await db.food.findUniqueOrThrow({ where: { id } });
  if (!food) throw new Error(`no food ${id}`);
  return fieldsOf(food, row);
}

test("a reference food saved as its form shows it is the same food", async () => {
  const context = testContext();
  const sorted = (foods: Awaited<ReturnType<typeof readFoods>>) =>
    foods.map((food) => ({ ...food, aliases: [...food.aliases].sort() }));
  const before = sorted(await readFoods(context.db));
  for (const food of before.slice(0, 60)) {
    const input = FoodInput.parse(await fieldsFor(context, food.id));
    // A serving's price is shown in whole cents, which it is kept in.
    expect(await saveFood(context, input)).toEqual({ ok: true, value: food.id });
  }
  expect(sorted(await readFoods(context.db))).toEqual(before);
});

test("what the user saved is left alone by a later catalogue, and other names stay theirs", async () => {
  const context = testContext();
  const typed = await fieldsFor(context, "apple");
  const input = FoodInput.parse({
    ...typed,
    name: "our apples",
    aliases: "orchard moon\nwhole apple",
    allergens: ["celery"],
    maybe: ["celery", "milk"],
  });
  expect(await saveFood(context, input)).toEqual({ ok: true, value: "apple" });
  const catalogue = referenceCatalogue();
  await loadCatalogue(context.db, { ...catalogue, version: catalogue.version + 1 });
  const apple = (await readFoods(context.db)).find((food) => food.id === "apple");
  expect(apple?.name).toBe("our apples");
  expect([...(apple?.aliases ?? [])].sort()).toEqual(["orchard moon", "whole apple"]);
  // What it surely holds needs no "check the label" as well.
  expect(apple).toMatchObject({ allergens: ["celery"], maybeAllergens: ["milk"] });
  const origins = await context.db.foodAlias.findMany({ where: { foodId: "apple" } });
  expect(origins.find(({ name }) => name === "whole apple")?.origin).toBe("reference");
  expect(origins.find(({ name }) => name === "orchard moon")?.origin).toBe("user");
});

test("the second of two tabs is told and overwrites nothing", async () => {
  const context = testContext();
  const typed = await fieldsFor(context, "apple");
  await saveFood(context, FoodInput.parse({ ...typed, name: "first" }));
  const second = await saveFood(context, FoodInput.parse({ ...typed, name: "second" }));
  expect(second).toEqual({ ok: false, problem: { kind: "changed-elsewhere" } });
  expect((await fieldsFor(context, "apple")).name).toBe("first");
});

test("a food of one's own is added once under its name, with a new family, beside any address word", async () => {
  const context = testContext();
  const { standing } = await loadNewFood(context, "Tricks");
  const input = FoodInput.parse({ ...standing, newFamily: "Seaside finds" });
  const added = await saveFood(context, input);
  expect(added).toEqual({ ok: true, value: "tricks-food" });
  expect(await context.db.family.findUnique({ where: { id: "seaside-finds" } })).toMatchObject({
    name: "Seaside finds",
  });
  const foods = await context.db.food.count();
  const again = await saveFood(context, { ...input, name: "TRICKS" });
  expect(again).toMatchObject({ ok: false, problem: { kind: "name-taken", id: "tricks-food" } });
  expect(await context.db.food.count()).toBe(foods);
});

test.each([
  ["no name", { name: "  " }, "name"],
  ["a name of 10,000 letters", { name: "x".repeat(10_000) }, "name"],
  ["no family", { familyId: "", newFamily: " " }, "familyId"],
  ["a group that is none", { group: "stones" }, "group"],
  ["days that are no number", { fridgeDays: "a week" }, "fridgeDays"],
  ["days below zero", { cutDays: "-1" }, "cutDays"],
  ["half a day", { freezerDays: "2.5" }, "freezerDays"],
  ["no serving", { servingGrams: "" }, "servingGrams"],
  ["a yield of nothing", { yieldFactor: "0" }, "yieldFactor"],
  ["a unit without a weight", { unitWeights: "slice thirty" }, "unitWeights"],
  ["a thirteenth month", { months: ["13"] }, "months.0"],
  ["an allergen that is none", { allergens: ["moonlight"] }, "allergens.0"],
])("%s is told beside its field", async (_, wrong, field) => {
  const { standing } = await loadNewFood(testContext(), "Plum jam");
  const parsed = FoodInput.safeParse({ ...standing, familyId: "plum", ...wrong });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual([field]);
});

test("a decimal comma is a decimal point, and units are read a line each", async () => {
  const { standing } = await loadNewFood(testContext(), "Plum jam");
  const parsed = FoodInput.parse({
    ...standing,
    familyId: "plum",
    servingGrams: "12,5",
    servingMoney: "0,35",
    unitWeights: "extra large slice 30\n\njar: 250 g",
    motifs: "Night sky, moon, Moon",
  });
  expect(parsed).toMatchObject({
    servingGrams: 12.5,
    servingMoney: 35,
    unitWeights: { "extra large slice": 30, jar: 250 },
    motifs: ["night-sky", "moon"],
  });
});

test("a retired food is offered no more and comes back as it was", async () => {
  const context = testContext();
  const ids = async (): Promise<string[]> => (await readFoods(context.db)).map(({ id }) => id);
  const before = await ids();
  await retire(context, { kind: "food", id: "apple", isRetired: true });
  expect(await ids()).toEqual(before.filter((id) => id !== "apple"));
  await retire(context, { kind: "food", id: "apple", isRetired: false });
  expect(await ids()).toEqual(before);
  expect(await retire(context, { kind: "food", id: "nothing", isRetired: true })).toEqual({
    ok: false,
    problem: { kind: "gone" },
  });
});
