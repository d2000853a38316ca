import { z } from "zod";
import { day, type Day } from "#lib/calendar/index.ts";
import type { Db } from "./client.ts";

/** The goods in some lunches, and what the children made of them. */
export type DraftGoods = {
  readonly products: ReadonlyMap<
    string,
    {
      readonly id: string;
      readonly name: string;
      readonly provenance: Provenance;
      readonly disclosure: string;
    }
  >;
  /** Where a product is sold, nearest shop first, by product. */
  readonly soldAt: ReadonlyMap<string, string>;
  readonly shops: ReadonlyMap<string, string>;
  readonly reactions: readonly {
    readonly itemId: string;
    readonly childId: string;
    readonly eaten: number | null;
    readonly face: number | null;
    readonly quote: string;
  }[];
};

/** What an episode's drafts rest on beside its lunches. */
export type DraftGround = DraftGoods & {
  readonly promises: readonly {
    readonly id: string;
    readonly what: string;
    readonly dueOn: Day | null;
    readonly keptOn: Day | null;
  }[];
  readonly lastPacked: ReadonlyMap<string, Day>;
  readonly lunchesBefore: number;
  readonly nextTitle: string | null;
};

const Provenance = z.enum(["bought", "gifted", "sponsored", "affiliate"]);
type Provenance = z.infer<typeof Provenance>;

type Asked = {
  readonly episodeId: string;
  readonly monday: Day;
  readonly sunday: Day;
  readonly lunchIds: readonly string[];
  readonly foodIds: readonly string[];
  readonly productIds: readonly string[];
};

/** Reads it in a handful of statements, however long the series is. */
export async function readDraftGround(db: Db, asked: Asked): Promise<DraftGround> {
  const { episodeId, monday, sunday } = asked;
  const [goods, promises, last, lunchesBefore, next] = await Promise.all([
    readGoods(db, asked.lunchIds, asked.productIds),
    db.viewerPromise.findMany({
      where: { OR: [{ episodeId }, { keptOn: null }, { keptOn: { gte: monday, lte: sunday } }] },
      orderBy: [{ dueOn: "asc" }, { id: "asc" }],
      select: { id: true, what: true, dueOn: true, keptOn: true },
    }),
    readLastPacked(db, asked),
    db.lunch.count({ where: { date: { lt: monday }, packedAt: { not: null } } }),
    db.episode.findFirst({
      where: { weekOf: { gt: monday } },
      orderBy: { weekOf: "asc" },
      select: { workingTitle: true, theme: { select: { name: true } } },
    }),
  ]);
  return {
    ...goods,
    promises: promises.map((one) => ({
      ...one,
      dueOn: one.dueOn === null ? null : day(one.dueOn),
      keptOn: one.keptOn === null ? null : day(one.keptOn),
    })),
    ...{ lastPacked: last, lunchesBefore },
    nextTitle: next ? (next.theme?.name ?? (next.workingTitle || null)) : null,
  };
}

/** The goods in some lunches and their verdicts. */
export async function readGoods(
  db: Db,
  lunchIds: readonly string[],
  productIds: readonly string[],
): Promise<DraftGoods> {
  const [products, shops, reactions] = await Promise.all([
    db.product.findMany({
      where: { id: { in: [...productIds] } },
      select: {
        ...{ id: true, name: true, provenance: true, disclosure: true },
        shops: { select: { shop: { select: { name: true, distanceOrder: true } } } },
      },
    }),
    db.shop.findMany({ select: { id: true, name: true } }),
    db.reaction.findMany({
      where: { item: { lunchId: { in: [...lunchIds] } } },
      select: { itemId: true, childId: true, eaten: true, face: true, quote: true },
    }),
  ]);
  return {
    products: new Map(
      products.map(({ id, name, provenance, disclosure }) => [
        id,
        { id, name, disclosure, provenance: Provenance.parse(provenance) },
      ]),
    ),
    soldAt: new Map(products.flatMap(({ id, shops: sold }) => nearest(id, sold))),
    shops: new Map(shops.map(({ id, name }) => [id, name])),
    reactions,
  };
}

function nearest(
  id: string,
  sold: readonly { readonly shop: { readonly name: string; readonly distanceOrder: number } }[],
): [string, string][] {
  const [first] = [...sold].sort((one, other) => one.shop.distanceOrder - other.shop.distanceOrder);
  return first ? [[id, first.shop.name]] : [];
}

const LastRows = z.array(z.object({ foodId: z.string(), last: z.string() }));

async function readLastPacked(
  db: Db,
  { foodIds, monday }: Pick<Asked, "foodIds" | "monday">,
): Promise<ReadonlyMap<string, Day>> {
  const rows = await db.$queryRaw<unknown[]>`
    SELECT i."foodId" AS foodId, MAX(l."date") AS last
    FROM json_each(${JSON.stringify(foodIds)}) f
    JOIN "LunchItem" i ON i."foodId" = f.value AND i."fate" IN ('packed', 'stepped-in')
    JOIN "Lunch" l ON l."id" = i."lunchId" AND l."date" < ${monday}
    GROUP BY i."foodId"`;
  return new Map(LastRows.parse(rows).map(({ foodId, last }) => [foodId, day(last)]));
}
