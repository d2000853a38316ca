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

/** When each food was on, by id; foods never on are missing. One statement over all items. */
export async function readFoodsSeen(db: Db, today: Day): Promise<ReadonlyMap<string, Seen>> {
  const [answer] = await db.$queryRaw<readonly { readonly rows: unknown }[]>`
    SELECT json_group_array(json_array(s."foodId", s.last, s.next, s.times)) AS rows FROM (
      SELECT i."foodId", max(CASE WHEN l."date" <= ${today} THEN l."date" END) AS last,
             min(CASE WHEN l."date" > ${today} THEN l."date" END) AS next,
             sum(l."date" <= ${today}) AS times
      FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
      WHERE i."fate" <> 'scrapped' GROUP BY i."foodId") s`;
  return seenOf(answer?.rows);
}

/** When each trick was on, by id; tricks never on are missing. */
export async function readTricksSeen(db: Db, today: Day): Promise<ReadonlyMap<string, Seen>> {
  const [answer] = await db.$queryRaw<readonly { readonly rows: unknown }[]>`
    SELECT json_group_array(json_array(s."trickId", s.last, s.next, s.times)) AS rows FROM (
      SELECT k."trickId", max(CASE WHEN l."date" <= ${today} THEN l."date" END) AS last,
             min(CASE WHEN l."date" > ${today} THEN l."date" END) AS next,
             sum(l."date" <= ${today}) AS times
      FROM "ItemTrick" k JOIN "LunchItem" i ON i."id" = k."itemId"
      JOIN "Lunch" l ON l."id" = i."lunchId"
      WHERE i."fate" <> 'scrapped' GROUP BY k."trickId") s`;
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
