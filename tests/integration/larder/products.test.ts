import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { loadFood, type FoodView } from "#lib/use-cases/larder/load-food.ts";
import { ProductInput, type ProductFields } from "#lib/use-cases/larder/product.input.ts";
import { recall } from "#lib/use-cases/larder/recall.ts";
import { saveProduct } from "#lib/use-cases/larder/save-product.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

async function demo(): Promise<Context> {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

async function viewOf(context: Context, id: string): Promise<FoodView> {
  const view = await loadFood(context, id, 1);
  if (!view || "mergedInto" in view) throw new Error(`no page for ${id}`);
  return view;
}

const NEW: ProductFields = {
  ...{ id: "", foodId: "hummus", revision: 0, name: "Hummus, tub", flavour: "lemon" },
  ...{ packGrams: "200", months: [], provenance: "bought", disclosure: "" },
  ...{ allergens: [], maybe: [], traits: [], status: "available", priceOn: "" },
  shops: [
    { shopId: "quayside-greens", isSold: true, aisle: "cold", onlyThere: false, price: "2,40" },
    { shopId: "lamp-street-market", isSold: false, aisle: "", onlyThere: false, price: "9" },
  ],
};

test("a product is kept with its shops; prices join a history, one a day and shop", async () => {
  const context = await demo();
  const added = await saveProduct(context, ProductInput.parse(NEW));
  const id = added.ok ? added.value : "";
  const typed = { ...NEW, id, revision: 1 };
  await saveProduct(context, ProductInput.parse({ ...typed, priceOn: "2026-01-05" }));
  const shops = NEW.shops.map((shop) => ({ ...shop, price: "2.55" }));
  await saveProduct(context, ProductInput.parse({ ...typed, revision: 2, shops }));

  const prices = await context.db.price.findMany({
    where: { productId: id },
    orderBy: { on: "asc" },
  });
  expect(prices.map(({ on, cents, shopId }) => [on, cents, shopId])).toEqual([
    ["2026-01-05", 240, "quayside-greens"],
    ["2026-03-11", 255, "quayside-greens"],
  ]);
  const view = await viewOf(context, "hummus");
  const product = view.products.find(({ fields }) => fields.id === id);
  expect(product?.soldAt).toBe("Quayside Greens");
  expect(product?.prices).toEqual([
    "Quayside Greens, Wed 11: 2.55",
    "Quayside Greens, 5 Jan: 2.40",
  ]);
  const stale = await saveProduct(context, ProductInput.parse(typed));
  expect(stale).toEqual({ ok: false, problem: { kind: "changed-elsewhere" } });
});

test("what was given or paid cannot be kept without the sentence that tells it", () => {
  const parsed = ProductInput.safeParse({ ...NEW, provenance: "gifted" });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual(["disclosure"]);
  const told = { ...NEW, provenance: "gifted" as const, disclosure: "It was a gift." };
  expect(ProductInput.parse(told).disclosure).toBe("It was a gift.");
});

test("a product names all that its food holds, whatever its own record leaves out", async () => {
  const context = await demo();
  await saveProduct(context, ProductInput.parse({ ...NEW, allergens: ["celery"], maybe: ["egg"] }));
  const { products, fields } = await viewOf(context, "hummus");
  const { say } = products.find((one) => one.fields.name === "Hummus, tub") ?? { say: undefined };
  expect(say?.allergens).toEqual(expect.arrayContaining([...fields.allergens, "celery"]));
  const maybe = [...fields.maybe, "egg"].filter((one) => !say?.allergens.includes(one as "egg"));
  expect(say?.maybeAllergens).toEqual(expect.arrayContaining(maybe));
});

test("when nothing of a food is sold, foods of its family and part are offered, nearest first", async () => {
  const context = await demo();
  expect((await viewOf(context, "crispbread")).standIns).toBeUndefined();
  await context.db.product.updateMany({
    where: { foodId: "crispbread" },
    data: { status: "discontinued" },
  });
  const { standIns = [], fields } = await viewOf(context, "crispbread");
  expect(standIns.length).toBeGreaterThan(0);
  for (const { id } of standIns) {
    const food = await context.db.food.findUniqueOrThrow({ where: { id } });
    const parts = JSON.parse(food.partsJson) as string[];
    expect(parts.some((part) => [fields.part, ...fields.otherParts].includes(part as "main"))).toBe(
      true,
    );
  }
});

test("a recall lists every lunch, lot and draft that holds the food, and lifting it clears the page", async () => {
  const context = await demo();
  const item = await context.db.lunchItem.findFirstOrThrow({
    where: { foodId: "crispbread", fate: "packed" },
    include: { lunch: true },
  });
  const draft = (generated: string, body: string) =>
    context.db.draft.create({
      data: {
        ...{ kind: "lunch post", generatedJson: generated, body },
        episodeId: item.lunch.episodeId,
      },
    });
  const resting = await draft(JSON.stringify([{ refs: [item.id] }]), "no name here");
  const naming = await draft("[]", "Crispbread at noon");
  await draft("[]", "something else");
  const mark = { kind: "food" as const, id: "crispbread", isRecalled: true, note: "lot 7" };
  expect(await recall(context, mark)).toMatchObject({ ok: true });

  const { holders, recallNote } = await viewOf(context, "crispbread");
  expect(recallNote).toBe("lot 7");
  const items = await context.db.lunchItem.findMany({ where: { foodId: "crispbread" } });
  expect(holders?.lunches.map(({ itemId }) => itemId).sort()).toEqual(
    items.map(({ id }) => id).sort(),
  );
  const lots = await context.db.stock.findMany({ where: { foodId: "crispbread", goneOn: null } });
  expect(holders?.lots.map(({ id }) => id).sort()).toEqual(lots.map(({ id }) => id).sort());
  expect(holders?.drafts.map(({ id }) => id).sort()).toEqual([resting.id, naming.id].sort());
  expect(holders?.lunches[0]?.date).toBe(day("2026-03-23"));

  await recall(context, { ...mark, isRecalled: false, note: "" });
  expect((await viewOf(context, "crispbread")).holders).toBeUndefined();
});

test("a product's recall lists its own lunches and those where nobody noted the product", async () => {
  const context = await demo();
  const mark = { kind: "product" as const, id: "gifted-crispbread", isRecalled: true, note: "x" };
  await recall(context, mark);
  const { holders } = await viewOf(context, "crispbread");
  const items = await context.db.lunchItem.findMany({
    where: {
      foodId: "crispbread",
      OR: [{ productId: "gifted-crispbread" }, { productId: null }],
    },
  });
  expect(items.length).toBeGreaterThan(0);
  expect(holders?.lunches.map(({ itemId }) => itemId).sort()).toEqual(
    items.map(({ id }) => id).sort(),
  );
});
