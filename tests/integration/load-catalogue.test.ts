import { expect, test } from "vitest";
import { readFoods } from "#lib/db/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceCatalogue } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

test("every reference food comes back out of storage as it went in", async () => {
  const { db } = testContext();
  const stored = new Map((await readFoods(db)).map((food) => [food.id, food]));
  for (const { food } of referenceCatalogue().foods) {
    const aliases = [...food.aliases].sort();
    const back = stored.get(food.id);
    expect(back && { ...back, aliases: [...back.aliases].sort() }).toEqual({ ...food, aliases });
  }
});

test("the same version writes nothing, a later one leaves what the user edited", async () => {
  const { db } = testContext();
  const catalogue = referenceCatalogue();
  expect(await loadCatalogue(db, catalogue)).toBe(0);

  await db.food.update({
    where: { id: "apple" },
    data: { name: "our apples", editedAt: new Date() },
  });
  await db.foodAlias.create({ data: { foodId: "banana", name: "moon fruit", origin: "user" } });
  const later = { ...catalogue, version: catalogue.version + 1 };
  expect(await loadCatalogue(db, later)).toBe(catalogue.foods.length - 1);
  expect(await db.food.findUnique({ where: { id: "apple" } })).toMatchObject({
    name: "our apples",
  });
  expect(await db.foodAlias.count({ where: { name: "moon fruit" } })).toBe(1);
});
