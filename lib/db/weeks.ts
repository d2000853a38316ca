import { z } from "zod";
import { day, type Day } from "#lib/calendar/index.ts";
import { Part, type Food } from "#lib/catalog/index.ts";
import type { Db } from "./client.ts";
import { foodOfRow } from "./foods.ts";
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
          food: { include: { aliases: { select: { name: true } } } },
          tricks: { include: { trick: { select: { id: true, name: true } } } },
          shares: { select: { childId: true, amount: true } },
        },
      },
    },
  },
} as const satisfies Prisma.EpisodeInclude;

type EpisodeRow = Prisma.EpisodeGetPayload<{ include: typeof include }>;

/** The episodes whose Monday lies from `from` to `to`, oldest first, with all their lunches. */
export async function readEpisodes(db: Db, from: Day, to: Day): Promise<EpisodeRecord[]> {
  const rows = await db.episode.findMany({
    where: { weekOf: { gte: from, lte: to } },
    orderBy: { weekOf: "asc" },
    include,
  });
  const foods = new Map<string, Food>();
  return rows.map((row) => episodeOfRow(row, foods));
}

/** The episode of one week, or undefined. */
export async function readEpisode(db: Db, monday: Day): Promise<EpisodeRecord | undefined> {
  return (await readEpisodes(db, monday, monday))[0];
}

function episodeOfRow(row: EpisodeRow, foods: Map<string, Food>): EpisodeRecord {
  const foodOf = (food: EpisodeRow["lunches"][number]["items"][number]["food"]): Food => {
    const known = foods.get(food.id) ?? foodOfRow(food);
    foods.set(food.id, known);
    return known;
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
    notes: row.notes,
    surprise: row.surprise,
    surpriseRevealOn: row.surpriseRevealOn,
    revision: row.revision,
    lunches: row.lunches.map((lunch) => ({
      id: lunch.id,
      date: day(lunch.date),
      angle: lunch.angle,
      minutesUsed: lunch.minutesUsed,
      revision: lunch.revision,
      isPacked: lunch.packedAt !== null,
      items: lunch.items.map((item) => ({
        id: item.id,
        food: foodOf(item.food),
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

const ShownRow = z.object({
  weekOf: z.string(),
  themeId: z.string().nullable(),
  motifs: z.string().nullable(),
  date: z.string(),
  foodId: z.string(),
  familyId: z.string(),
  productId: z.string().nullable(),
  isStaple: z.coerce.boolean(),
  tricks: z.string().nullable(),
});

/**
 * What was or is to be on from one day to another, one flat row an item, scrapped items left out:
 * the memory that repeats are judged by. One statement, so that ten years stay cheap.
 */
export async function readShown(db: Db, from: Day, to: Day): Promise<z.infer<typeof ShownRow>[]> {
  const rows = await db.$queryRaw`
    SELECT e."weekOf", e."themeId", t."motifsJson" AS motifs, l."date", i."foodId", f."familyId",
           i."productId", f."isStaple",
           (SELECT group_concat(it."trickId") FROM "ItemTrick" it WHERE it."itemId" = i."id") AS tricks
    FROM "Episode" e
    JOIN "Lunch" l ON l."episodeId" = e."id"
    JOIN "LunchItem" i ON i."lunchId" = l."id" AND i."fate" <> 'scrapped'
    JOIN "Food" f ON f."id" = i."foodId"
    LEFT JOIN "Theme" t ON t."id" = e."themeId"
    WHERE l."date" >= ${from} AND l."date" <= ${to}
    ORDER BY l."date", i."position"`;
  return z.array(ShownRow).parse(rows);
}
