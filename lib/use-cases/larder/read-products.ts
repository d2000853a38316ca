import { z } from "zod";
import { day, nearDay, type Day } from "#lib/calendar/index.ts";
import {
  Allergen,
  inheritedAllergens,
  Trait,
  type AllergenSay,
  type Food,
} from "#lib/catalog/index.ts";
import { parseColumn, type Db } from "#lib/db/index.ts";
import { text } from "./food-fields.ts";
import { PRODUCT_STATUSES, PROVENANCES, type ProductFields } from "./product.input.ts";

/** A product as the food's page shows it. */
export type ProductView = {
  readonly fields: ProductFields;
  readonly isRetired: boolean;
  readonly recallNote: string | null;
  readonly say: AllergenSay;
  /** Price history, latest first: "Quayside Greens, 4 Feb: 2.40". */
  readonly prices: readonly string[];
  readonly soldAt: string;
};

const PRICES_SHOWN = 8;

/** The products of a food, those in use first, each with its shops and prices. */
export async function readProducts(
  { db, today }: { readonly db: Db; readonly today: Day },
  food: Food,
  shops: readonly { readonly id: string; readonly name: string }[],
): Promise<ProductView[]> {
  const rows = await db.product.findMany({
    where: { foodId: food.id },
    orderBy: [{ retiredAt: "asc" }, { name: "asc" }],
    include: {
      shops: true,
      prices: {
        orderBy: [{ on: "desc" }, { id: "asc" }],
        include: { shop: { select: { name: true } } },
      },
    },
  });
  return rows.map((row) => {
    const allergens = parseColumn(z.array(Allergen), row.allergensJson, "Product.allergens");
    const maybe = parseColumn(z.array(Allergen), row.maybeJson, "Product.maybe");
    const soldAt = (id: string) => row.shops.find(({ shopId }) => shopId === id);
    return {
      fields: {
        ...{ id: row.id, foodId: food.id, revision: row.revision, name: row.name },
        ...{ flavour: row.flavour, packGrams: text(row.packGrams), disclosure: row.disclosure },
        months:
          parseColumn(z.array(z.number()).nullable(), row.seasonJson ?? "null", "season") ?? [],
        provenance: Provenance.parse(row.provenance),
        ...{ allergens, maybe },
        traits: parseColumn(z.array(Trait), row.traitsJson, "Product.traits"),
        status: Status.parse(row.status),
        shops: shops.map(({ id }) => ({
          ...{ shopId: id, isSold: soldAt(id) !== undefined, aisle: soldAt(id)?.aisle ?? "" },
          ...{ onlyThere: soldAt(id)?.onlyThere ?? false, price: "" },
        })),
        priceOn: "" as const,
      },
      isRetired: row.retiredAt !== null,
      recallNote: row.recalledAt === null ? null : row.recallNote,
      say: inheritedAllergens(food, { allergens, maybeAllergens: maybe }),
      prices: row.prices
        .slice(0, PRICES_SHOWN)
        .map(
          ({ shop, cents, on }) =>
            `${shop.name}, ${nearDay(day(on), today)}: ${(cents / 100).toFixed(2)}`,
        ),
      soldAt: shops
        .filter(({ id }) => soldAt(id) !== undefined)
        .map(({ name }) => name)
        .join(", "),
    };
  });
}

const Provenance = z.enum(PROVENANCES);
const Status = z.enum(PRODUCT_STATUSES);
