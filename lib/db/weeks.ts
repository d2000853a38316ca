import { z } from "zod";
import { day, type Day } from "#lib/calendar/index.ts";
import { Part, type Food } from "#lib/catalog/index.ts";
import type { Db } from "./client.ts";
import { readFoodsById } from "./foods.ts";
import type { Prisma } from "./generated/client.ts";
import { parseColumn } from "./json.ts";

export const Fate = z.enum(["planned", "packed", "scrapped", "stepped-in"]);
export type Fate = z.infer<typeof Fate>;

/** An item of a lunch as stored; amounts are for a child of portion factor 1. */
export type ItemRecord = {
  readonly id: string;
  readonly food: Food;
  readonly productId: string | null;
  readonly shopId: string | null;
  readonly part: Part;
  readonly amount: number;
  readonly unit: string;
  readonly fate: Fate;
  readonly reason: string;
  readonly insteadOfId: string | null;
  readonly note: string;
  readonly tricks: readonly { readonly id: string; readonly name: string }[];
  /** Amounts that differ for one child; 0 means not for this child. */
  readonly shares: readonly { readonly childId: string; readonly amount: number }[];
};

export type LunchRecord = {
  readonly id: string;
  readonly date: Day;
  readonly angle: string;
  readonly minutesUsed: number | null;
  /** Outdoors that day, °C, as typed. */
  readonly ambientC: number | null;
  readonly revision: number;
  readonly isPacked: boolean;
  readonly items: readonly ItemRecord[];
};

export type ThemeRecord = {
  readonly id: string;
  readonly name: string;
  readonly motifs: readonly string[];
};

export type EpisodeRecord = {
  readonly id: string;
  readonly number: number;
  readonly weekOf: Day;
  readonly theme: ThemeRecord | null;
  readonly workingTitle: string;
  readonly lockedAt: Date | null;
  readonly publishedAt: Date | null;
  readonly publishedOn: Day | null;
  readonly url: string;
  readonly notes: string;
  readonly surprise: string;
  readonly surpriseRevealOn: string | null;
  readonly revision: number;
  readonly lunches: readonly LunchRecord[];
};

const include = {
  theme: { select: { id: true, name: true, motifsJson: true } },
  lunches: {
    orderBy: { date: "asc" },
    include: {
      items: {
        orderBy: { position: "asc" },
        include: {
          tricks: { include: { trick: { select: { id: true, name: true } } } },
          shares: { select: { childId: true, amount: true } },
        },
      },
    },
  },
} as const satisfies Prisma.EpisodeInclude;

type EpisodeRow = Prisma.EpisodeGetPayload<{ include: typeof include }>;

/** The episodes whose Monday lies from `from` to `to`, oldest first, with all their lunches. */
export function readEpisodes(db: Db, from: Day, to: Day): Promise<EpisodeRecord[]> {
  return readEpisodesWhere(db, { weekOf: { gte: from, lte: to } });
}

/** The episodes of these lunches, oldest first, with all their lunches. */
export function readEpisodesOfLunches(
  db: Db,
  lunchIds: readonly string[],
): Promise<EpisodeRecord[]> {
  return readEpisodesWhere(db, { lunches: { some: { id: { in: [...lunchIds] } } } });
}

async function readEpisodesWhere(
  db: Db,
  where: Prisma.EpisodeWhereInput,
): Promise<EpisodeRecord[]> {
  const rows = await db.episode.findMany({
    where,
    orderBy: { weekOf: "asc" },
    include,
  });
  const items = rows.flatMap((row) => row.lunches.flatMap((lunch) => lunch.items));
  const foods = await readFoodsById(db, [...new Set(items.map((item) => item.foodId))]);
  return rows.map((row) => episodeOfRow(row, foods));
}

/** The episode of one week, or undefined. */
export async function readEpisode(db: Db, monday: Day): Promise<EpisodeRecord | undefined> {
  return (await readEpisodes(db, monday, monday))[0];
}

/** The Mondays of the episodes before and after one, where there are any. One statement. */
export async function readNeighbours(
  db: Db,
  monday: Day,
): Promise<{ readonly before: Day | undefined; readonly after: Day | undefined }> {
  const [row] = await db.$queryRaw<
    readonly { readonly before: string | null; readonly after: string | null }[]
  >`SELECT (SELECT MAX("weekOf") FROM "Episode" WHERE "weekOf" < ${monday}) AS before,
           (SELECT MIN("weekOf") FROM "Episode" WHERE "weekOf" > ${monday}) AS after`;
  return {
    before: row?.before ? day(row.before) : undefined,
    after: row?.after ? day(row.after) : undefined,
  };
}

function episodeOfRow(row: EpisodeRow, foods: ReadonlyMap<string, Food>): EpisodeRecord {
  const foodOf = (id: string): Food => {
    const food = foods.get(id);
    if (!food) throw new Error(`The food ${id} of a lunch is not on record.`);
    return food;
  };
  return {
    id: row.id,
    number: row.number,
    weekOf: day(row.weekOf),
    theme: row.theme && {
      id: row.theme.id,
      name: row.theme.name,
      motifs: parseColumn(z.array(z.string()), row.theme.motifsJson, "Theme.motifs"),
    },
    workingTitle: row.workingTitle,
    lockedAt: row.lockedAt,
    publishedAt: row.publishedAt,
    publishedOn: row.publishedOn === null ? null : day(row.publishedOn),
    url: row.url,
    notes: row.notes,
    surprise: row.surprise,
    surpriseRevealOn: row.surpriseRevealOn,
    revision: row.revision,
    lunches: row.lunches.map((lunch) => ({
      id: lunch.id,
      date: day(lunch.date),
      angle: lunch.angle,
      minutesUsed: lunch.minutesUsed,
      ambientC: lunch.ambientC,
      revision: lunch.revision,
      isPacked: lunch.packedAt !== null,
      items: lunch.items.map((item) => ({
        id: item.id,
        food: foodOf(item.foodId),
        productId: item.productId,
        shopId: item.shopId,
        part: Part.parse(item.part),
        amount: item.amount,
        unit: item.unit,
        fate: Fate.parse(item.fate),
        reason: item.reason,
        insteadOfId: item.insteadOfId,
        note: item.note,
        tricks: item.tricks.map(({ trick }) => trick),
        shares: item.shares,
      })),
    })),
  };
}

/** What was or is to be on, one flat row an item. */
export type ShownRow = {
  readonly weekOf: Day;
  readonly themeId: string | null;
  /** The theme's motifs as stored, a JSON list. */
  readonly motifs: string | null;
  readonly date: Day;
  readonly foodId: string;
  readonly familyId: string;
  readonly productId: string | null;
  readonly isStaple: boolean;
  readonly trickIds: readonly string[];
};

const Text = z.string();

/**
 * What was or is to be on from one day to another, scrapped items left out: the memory that repeats
 * are judged by. One statement that answers with one text, so that ten years stay cheap.
 */
export async function readShown(db: Db, from: Day, to: Day): Promise<ShownRow[]> {
  const [answer] = await db.$queryRaw<readonly { readonly rows: unknown }[]>`
    SELECT json_group_array(json_array(e."weekOf", e."themeId", t."motifsJson", l."date", i."foodId",
           f."familyId", i."productId", f."isStaple",
           (SELECT group_concat(k."trickId") FROM "ItemTrick" k WHERE k."itemId" = i."id"))) AS rows
    FROM "Lunch" l
    JOIN "Episode" e ON e."id" = l."episodeId"
    JOIN "LunchItem" i ON i."lunchId" = l."id" AND i."fate" <> 'scrapped'
    JOIN "Food" f ON f."id" = i."foodId"
    LEFT JOIN "Theme" t ON t."id" = e."themeId"
    WHERE l."date" >= ${from} AND l."date" <= ${to}`;
  type Cells = [
    ...[Day, string | null, string | null, Day, string, string, string | null, number],
    string | null,
  ];
  const rows = JSON.parse(Text.parse(answer?.rows)) as Cells[];
  return rows
    .map(([weekOf, themeId, motifs, date, foodId, familyId, productId, isStaple, tricks]) => ({
      ...{ weekOf, themeId, motifs, date, foodId, familyId, productId },
      isStaple: isStaple === 1,
      trickIds: tricks?.split(",") ?? [],
    }))
    .sort((left, right) => (left.date < right.date ? -1 : left.date > right.date ? 1 : 0));
}
