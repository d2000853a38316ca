import { z } from "zod";
import { day, type Day } from "#lib/calendar/index.ts";
import type { Lot, Place } from "#lib/shopping/index.ts";
import type { Db } from "./client.ts";

/** How a food stands in the Larder, beside what it is. */
export type FoodState = {
  readonly id: string;
  readonly isRetired: boolean;
  readonly mergedIntoId: string | null;
  readonly isRecalled: boolean;
  /** The user's own, not of the reference catalogue. */
  readonly isOwn: boolean;
};

/** The states of all foods, merged ones too. */
export async function readFoodStates(db: Db): Promise<FoodState[]> {
  const rows = await db.food.findMany({
    select: {
      id: true,
      retiredAt: true,
      mergedIntoId: true,
      recalledAt: true,
      catalogueVersion: true,
    },
  });
  return rows.map((row) => ({
    id: row.id,
    isRetired: row.retiredAt !== null,
    mergedIntoId: row.mergedIntoId,
    isRecalled: row.recalledAt !== null,
    isOwn: row.catalogueVersion === null,
  }));
}

/** When something was on and is to be on. */
export type Seen = {
  readonly last: Day | null;
  /** The next day it is planned for, after today. */
  readonly next: Day | null;
  /** Items up to today, scrapped ones left out. */
  readonly times: number;
};

type SeenCells = [string, string | null, string | null, number];

/** What can have been on. */
export type SeenLevel = "food" | "product" | "trick" | "theme";

const FROM_ITEMS = `"LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"`;

/** One row for each time: what, and the day. A theme counts by the Monday of its week. */
const TIMES: Readonly<Record<SeenLevel, string>> = {
  food: `SELECT i."foodId" AS id, l."date" AS date FROM ${FROM_ITEMS} WHERE i."fate" <> 'scrapped'`,
  product: `SELECT i."productId" AS id, l."date" AS date FROM ${FROM_ITEMS}
    WHERE i."fate" <> 'scrapped' AND i."productId" IS NOT NULL`,
  trick: `SELECT k."trickId" AS id, l."date" AS date FROM "ItemTrick" k
    JOIN "LunchItem" i ON i."id" = k."itemId" JOIN "Lunch" l ON l."id" = i."lunchId"
    WHERE i."fate" <> 'scrapped'`,
  theme: `SELECT "themeId" AS id, "weekOf" AS date FROM "Episode" WHERE "themeId" IS NOT NULL`,
};

/** When each food, product, trick or theme was on, by id; those never on are missing. One statement. */
export async function readSeen(
  db: Db,
  level: SeenLevel,
  today: Day,
): Promise<ReadonlyMap<string, Seen>> {
  const [answer] = await db.$queryRawUnsafe<readonly { readonly rows: unknown }[]>(
    `SELECT json_group_array(json_array(s.id, s.last, s.next, s.times)) AS rows FROM (
       SELECT t.id, max(CASE WHEN t.date <= ?1 THEN t.date END) AS last,
              min(CASE WHEN t.date > ?1 THEN t.date END) AS next, sum(t.date <= ?1) AS times
       FROM (${TIMES[level]}) t GROUP BY t.id) s`,
    today,
  );
  return seenOf(answer?.rows);
}

function seenOf(rows: unknown): Map<string, Seen> {
  const cells = JSON.parse(z.string().parse(rows)) as SeenCells[];
  return new Map(
    cells.map(([id, last, next, times]) => [
      id,
      { last: last === null ? null : day(last), next: next === null ? null : day(next), times },
    ]),
  );
}

/** The lots on hand of every food. */
export async function readLots(db: Db): Promise<Lot[]> {
  const rows = await db.stock.findMany({ where: { goneOn: null }, orderBy: { id: "asc" } });
  const dayOf = (text: string | null): Day | null => (text === null ? null : day(text));
  return rows.map((row) => ({
    ...{ id: row.id, foodId: row.foodId, productId: row.productId, grams: row.grams },
    ...{ boughtOn: dayOf(row.boughtOn), openedOn: dayOf(row.openedOn), useBy: dayOf(row.useBy) },
    ...{ cutOn: null, preparedOn: null },
    place: Places.parse(row.place),
  }));
}

const Places = z.enum(["pantry", "fridge", "freezer"] satisfies readonly Place[]);

/** What of a product the Larder's table shows. */
export type ProductGlance = {
  readonly id: string;
  readonly foodId: string;
  readonly name: string;
  readonly flavour: string;
  readonly provenance: string;
  readonly status: string;
  readonly isRecalled: boolean;
  /** Names of the shops that sell it, nearest first. */
  readonly shops: readonly string[];
};

/** The products in use, by name. */
export async function readProductGlances(db: Db): Promise<ProductGlance[]> {
  const rows = await db.product.findMany({
    where: { retiredAt: null },
    orderBy: { name: "asc" },
    include: {
      shops: { select: { shop: { select: { name: true, distanceOrder: true, retiredAt: true } } } },
    },
  });
  return rows.map((row) => ({
    ...{ id: row.id, foodId: row.foodId, name: row.name, flavour: row.flavour },
    ...{ provenance: row.provenance, status: row.status, isRecalled: row.recalledAt !== null },
    shops: row.shops
      .map(({ shop }) => shop)
      .filter((shop) => shop.retiredAt === null)
      .sort((left, right) => left.distanceOrder - right.distanceOrder)
      .map((shop) => shop.name),
  }));
}

/** The earliest day by which scrapped food should still be used, by food. */
export async function readOwedFoods(db: Db): Promise<ReadonlyMap<string, Day>> {
  const rows = await db.lunchItem.findMany({
    where: { fate: "scrapped", settledOn: null, owedUseBy: { not: null } },
    select: { foodId: true, owedUseBy: true },
    orderBy: { owedUseBy: "desc" },
  });
  return new Map(rows.flatMap((row) => (row.owedUseBy ? [[row.foodId, day(row.owedUseBy)]] : [])));
}
