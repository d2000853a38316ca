import { expect, test } from "vitest";
import { readShops } from "#lib/db/index.ts";
import { ShopInput } from "#lib/use-cases/bible/shop-sheet.input.ts";
import { loadShopSheet, moveShop, retireShop, saveShop } from "#lib/use-cases/bible/shop-sheet.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { testContext } from "#tests/support/test-context.ts";

const shop = (name: string) => ({
  ...{ id: "", stamp: "", name, days: ["6", "2"], hours: "8–12", note: "early" },
  aisles: "bread\n\n fruit \nbread",
});

async function add(context: Context, name: string): Promise<string> {
  const saved = await saveShop(context, ShopInput.parse(shop(name)));
  return saved.ok ? saved.value.id : "";
}

test("shops stand in the order they came, and move one place at a time", async () => {
  const context = testContext();
  const [near, middle, far] = [
    await add(context, "Near"),
    await add(context, "Middle"),
    await add(context, "Far"),
  ];
  const order = async () => (await readShops(context.db)).map(({ name }) => name);
  expect(await order()).toEqual(["Near", "Middle", "Far"]);
  await moveShop(context, { id: far, way: "nearer" });
  expect(await order()).toEqual(["Near", "Far", "Middle"]);
  await moveShop(context, { id: near, way: "nearer" });
  await moveShop(context, { id: middle, way: "farther" });
  expect(await order()).toEqual(["Near", "Far", "Middle"]);
  await retireShop(context, { id: far, isRetired: true });
  await moveShop(context, { id: middle, way: "nearer" });
  expect(await order()).toEqual(["Middle", "Near", "Far"]);
  expect((await moveShop(context, { id: far, way: "nearer" })).ok).toBe(false);
});

test("aisles keep the user's order; a second tab and a taken name are told", async () => {
  const context = testContext();
  const id = await add(context, "Lamp Street");
  await add(context, "Quay");
  const sheet = await loadShopSheet(context, id);
  expect(sheet).toMatchObject({ days: ["2", "6"], aisles: "bread\nfruit" });
  const renamed = (name: string) => saveShop(context, ShopInput.parse({ ...sheet, name }));
  expect(await renamed("QUAY")).toEqual({
    ok: false,
    problem: { kind: "shop-name-taken", field: "name" },
  });
  expect((await renamed("Lamp Street East")).ok).toBe(true);
  expect(await renamed("Lamp Street West")).toEqual({
    ok: false,
    problem: { kind: "changed-elsewhere" },
  });
});
