import { z } from "zod";
import { Allergen, Trait } from "#lib/catalog/index.ts";
import type { LabelRecord } from "#lib/safety/index.ts";
import type { Db } from "./client.ts";
import { parseColumn } from "./json.ts";
import { keepUntilWritten } from "./kept.ts";

const Allergens = z.array(Allergen);
const Traits = z.array(Trait);

/** What is recorded of every product's label, by product id. */
export function readLabels(db: Db): Promise<ReadonlyMap<string, LabelRecord>> {
  return keepUntilWritten(db, "labels", async () => {
    const rows = await db.product.findMany({
      select: { id: true, name: true, allergensJson: true, maybeJson: true, traitsJson: true },
    });
    return new Map(
      rows.map((row) => [
        row.id,
        {
          name: row.name,
          allergens: parseColumn(Allergens, row.allergensJson, "Product.allergens"),
          maybeAllergens: parseColumn(Allergens, row.maybeJson, "Product.maybe"),
          traits: parseColumn(Traits, row.traitsJson, "Product.traits"),
        },
      ]),
    );
  });
}

/** Foods and products marked as recalled or suspect, by id, with the note. */
export type Recalls = {
  readonly foods: ReadonlyMap<string, string>;
  readonly products: ReadonlyMap<string, string>;
  /** Foods of which a product is marked: its name, and whether another product is still sold. */
  readonly foodsInPart: ReadonlyMap<
    string,
    { readonly product: string; readonly hasOther: boolean }
  >;
};

/** What is marked as recalled or suspect now. */
export function readRecalls(db: Db): Promise<Recalls> {
  return keepUntilWritten(db, "recalls", async () => {
    const marked = { where: { recalledAt: { not: null } }, select: { id: true, recallNote: true } };
    const [foods, products] = await Promise.all([
      db.food.findMany(marked),
      db.product.findMany({
        ...marked,
        select: { ...marked.select, name: true, foodId: true },
        orderBy: { name: "asc" },
      }),
    ]);
    const others = await db.product.findMany({
      where: {
        foodId: { in: products.map(({ foodId }) => foodId) },
        ...{ recalledAt: null, retiredAt: null, status: "available" },
      },
      select: { foodId: true },
    });
    const hasOther = new Set(others.map(({ foodId }) => foodId));
    const byId = (rows: readonly { id: string; recallNote: string }[]): Map<string, string> =>
      new Map(rows.map(({ id, recallNote }) => [id, recallNote]));
    return {
      foods: byId(foods),
      products: byId(products),
      foodsInPart: new Map(
        products.map(({ foodId, name }) => [
          foodId,
          { product: name, hasOther: hasOther.has(foodId) },
        ]),
      ),
    };
  });
}

/** What the user decided to keep, by lunch and finding, with the note. */
export async function readWaivers(
  db: Db,
  lunchIds: readonly string[],
): Promise<ReadonlyMap<string, ReadonlyMap<string, string>>> {
  const rows = await db.waiver.findMany({ where: { lunchId: { in: [...lunchIds] } } });
  const notes = new Map<string, Map<string, string>>();
  for (const { lunchId, key, note } of rows) {
    const held = notes.get(lunchId) ?? new Map<string, string>();
    notes.set(lunchId, held.set(key, note));
  }
  return notes;
}
