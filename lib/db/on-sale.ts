import { Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";

/** A product where a shop sells it, with the price last noted there. */
export type OnSale = {
  readonly productId: string;
  readonly foodId: string;
  readonly name: string;
  readonly packAmount: number | null;
  readonly packUnit: string | null;
  readonly packGrams: number | null;
  readonly shopId: string;
  readonly aisle: string;
  readonly onlyThere: boolean;
  /** Of one pack: noted at this shop, else at any other; null when no price was ever noted. */
  readonly cents: number | null;
};

type SaleRow = Omit<OnSale, "onlyThere"> & { readonly onlyThere: number };

/**
 * The products that can be had of some foods as known on a day: available, not retired and not
 * recalled, in shops still visited; where one shop alone has a product, only there.
 */
export async function readOnSale(
  db: Db,
  foodIds: readonly string[],
  on: Day,
): Promise<readonly OnSale[]> {
  const rows = await db.$queryRaw<readonly SaleRow[]>`
    SELECT p."id" AS "productId", p."foodId", p."name", p."packAmount", p."packUnit", p."packGrams",
           ps."shopId", ps."aisle", ps."onlyThere",
           coalesce(
             (SELECT "cents" FROM "Price" WHERE "productId" = p."id" AND "shopId" = ps."shopId"
               AND "on" <= ${on} ORDER BY "on" DESC, "id" DESC LIMIT 1),
             (SELECT "cents" FROM "Price" WHERE "productId" = p."id" AND "on" <= ${on}
               ORDER BY "on" DESC, "id" DESC LIMIT 1)) AS "cents"
    FROM "Product" p
    JOIN "Food" f ON f."id" = p."foodId" AND f."recalledAt" IS NULL
    JOIN "ProductShop" ps ON ps."productId" = p."id"
    JOIN "Shop" s ON s."id" = ps."shopId" AND s."retiredAt" IS NULL
    WHERE p."foodId" IN (SELECT value FROM json_each(${JSON.stringify(foodIds)}))
      AND p."status" = 'available' AND p."retiredAt" IS NULL AND p."recalledAt" IS NULL
    ORDER BY p."name", p."id", s."distanceOrder"`;
  const onlyAt = new Map(
    rows.filter((row) => Number(row.onlyThere) === 1).map((row) => [row.productId, row.shopId]),
  );
  return rows
    .map((row) => ({
      ...row,
      onlyThere: Number(row.onlyThere) === 1,
      cents: row.cents === null ? null : Number(row.cents),
    }))
    .filter(({ productId, shopId }) => (onlyAt.get(productId) ?? shopId) === shopId);
}

/** Where a shop keeps a group of foods, by how many of its products stand there. */
export type GroupPlace = {
  readonly group: string;
  readonly shopId: string;
  readonly aisle: string;
};

/** Which shops sell which groups of foods, the aisle with most of them first. */
export async function readGroupPlaces(db: Db): Promise<readonly GroupPlace[]> {
  return db.$queryRaw<readonly GroupPlace[]>`
    SELECT f."group", ps."shopId", ps."aisle"
    FROM "ProductShop" ps
    JOIN "Product" p ON p."id" = ps."productId" AND p."retiredAt" IS NULL
    JOIN "Food" f ON f."id" = p."foodId"
    JOIN "Shop" s ON s."id" = ps."shopId" AND s."retiredAt" IS NULL
    GROUP BY f."group", ps."shopId", ps."aisle"
    ORDER BY count(*) DESC, ps."shopId", ps."aisle"`;
}

/** The foods of the user's own among these that are made at home: prep steps, and no product. */
export async function readHomeMade(
  db: Db,
  foodIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await db.food.findMany({
    where: {
      id: { in: [...foodIds] },
      catalogueVersion: null,
      stepsJson: { not: "[]" },
      products: { none: {} },
    },
    select: { id: true },
  });
  return new Set(rows.map(({ id }) => id));
}
