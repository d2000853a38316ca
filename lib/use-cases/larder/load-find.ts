import { day, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { appearancePages, readAppearances, type Appearance, type Subject } from "./appearances.ts";
import { findAnything, type Hit } from "./find-anything.ts";
import type { FindInput } from "./load-find.input.ts";

/** A week that had a theme. */
type ThemeWeek = {
  readonly number: number;
  readonly weekOf: Day;
  readonly lunches: number;
  readonly isPublished: boolean;
};

/** How much of something a child ate, over all verdicts. */
type ChildMean = {
  readonly child: string;
  /** Percent eaten on the whole. */
  readonly percent: number;
  readonly verdicts: number;
};

export type FindView = {
  readonly hits: readonly Hit[];
  /** The one that is spread out: the chosen, or the likeliest. */
  readonly chosen: Hit | undefined;
  readonly appearances: readonly Appearance[];
  readonly weeks: readonly ThemeWeek[];
  readonly means: readonly ChildMean[];
  readonly page: number;
  readonly pages: number;
};

/** Everything that goes by a name, and when one of it was on, with what was said. */
export async function loadFind(context: Context, asked: FindInput): Promise<FindView> {
  const { db } = context;
  const hits = await findAnything(context, asked.q);
  const chosen = hits.find(({ kind, id }) => kind === asked.kind && id === asked.id) ?? hits[0];
  if (!chosen) return { hits, chosen, appearances: [], weeks: [], means: [], page: 1, pages: 1 };
  const means = await readMeans(db, chosen);
  if (chosen.kind === "theme") {
    const weeks = await readThemeWeeks(db, chosen.id);
    return { hits, chosen, appearances: [], weeks, means, page: 1, pages: 1 };
  }
  const subject = { kind: chosen.kind, id: chosen.id };
  const { appearances, total } = await readAppearances(db, subject, asked.page);
  const pages = appearancePages(total);
  return { hits, chosen, appearances, weeks: [], means, page: asked.page, pages };
}

async function readThemeWeeks(db: Db, themeId: string): Promise<ThemeWeek[]> {
  const rows = await db.episode.findMany({
    where: { themeId },
    orderBy: { weekOf: "desc" },
    select: {
      ...{ number: true, weekOf: true, publishedOn: true, publishedAt: true },
      _count: { select: { lunches: true } },
    },
  });
  return rows.map((row) => ({
    ...{ number: row.number, weekOf: day(row.weekOf), lunches: row._count.lunches },
    isPublished: row.publishedAt !== null || row.publishedOn !== null,
  }));
}

const OF_SUBJECT: Readonly<Record<Subject["kind"], string>> = {
  food: `i."foodId" = ?`,
  product: `i."productId" = ?`,
  trick: `EXISTS (SELECT 1 FROM "ItemTrick" k WHERE k."itemId" = i."id" AND k."trickId" = ?)`,
  theme: `l."episodeId" IN (SELECT "id" FROM "Episode" WHERE "themeId" = ?)`,
};

/** Percent eaten by child over everything with the subject; one statement. */
async function readMeans(db: Db, { kind, id }: Subject): Promise<ChildMean[]> {
  const rows = await db.$queryRawUnsafe<
    readonly { readonly child: string; readonly mean: number; readonly n: bigint }[]
  >(
    `SELECT c."onScreenName" AS child, avg(r."eaten") * 25.0 AS mean, count(r."eaten") AS n
     FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
     JOIN "Reaction" r ON r."itemId" = i."id" AND r."eaten" IS NOT NULL
     JOIN "Child" c ON c."id" = r."childId"
     WHERE i."fate" <> 'scrapped' AND ${OF_SUBJECT[kind]}
     GROUP BY c."id" ORDER BY c."position"`,
    id,
  );
  return rows.map(({ child, mean, n }) => ({
    ...{ child, percent: Math.round(mean), verdicts: Number(n) },
  }));
}
