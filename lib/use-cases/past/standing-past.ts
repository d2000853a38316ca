import { groupBy } from "#lib/base/index.ts";
import { addDays, mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";

/** What stands on record in the weeks that a file speaks of. */
export type StandingPast = {
  /** By Monday. */
  readonly episodes: ReadonlyMap<string, StandingEpisode>;
  /** By date. */
  readonly lunches: ReadonlyMap<string, StandingLunch>;
};

type StandingEpisode = { readonly id: string; readonly theme: string | null };
type StandingLunch = {
  readonly id: string;
  readonly isPacked: boolean;
  readonly itemCount: number;
  /** By `itemKey`. */
  readonly items: ReadonlyMap<string, StandingItem>;
};
type StandingItem = { readonly id: string; readonly verdicts: ReadonlyMap<string, string> };

/** Two items of a day are the same when food, part and amount are. */
export function itemKey(foodId: string, part: string, amount: number, unit: string): string {
  return JSON.stringify([foodId, part, amount, unit]);
}

/** Two verdicts are the same when what was eaten, the face and the quote are. */
export function verdictKey(verdict: {
  readonly eaten: number | null;
  readonly face: number | null;
  readonly quote: string;
}): string {
  return JSON.stringify([verdict.eaten, verdict.face, verdict.quote]);
}

/** Reads what stands in the weeks of some days. */
export async function readStandingPast(db: Db, days: readonly Day[]): Promise<StandingPast> {
  const sorted = [...days].sort();
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined) return { episodes: new Map(), lunches: new Map() };
  const rows = await db.episode.findMany({
    where: { weekOf: { gte: mondayOf(first), lte: addDays(mondayOf(last), 6) } },
    select: { id: true, weekOf: true, theme: { select: { name: true } } },
  });
  const lunches = await db.lunch.findMany({
    where: { date: { gte: first, lte: last } },
    select: { id: true, date: true, packedAt: true },
  });
  const items = await db.$queryRaw<readonly ItemRow[]>`
    SELECT i."id", i."lunchId", i."foodId", i."part", i."amount", i."unit"
    FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
    WHERE i."fate" <> 'scrapped' AND l."date" BETWEEN ${first} AND ${last}`;
  const verdicts = await db.$queryRaw<readonly VerdictRow[]>`
    SELECT r."itemId", r."childId", r."eaten", r."face", r."quote"
    FROM "Reaction" r JOIN "LunchItem" i ON i."id" = r."itemId"
    JOIN "Lunch" l ON l."id" = i."lunchId" WHERE l."date" BETWEEN ${first} AND ${last}`;
  const verdictsOf = groupBy(verdicts, (row) => row.itemId);
  const itemsOf = groupBy(items, (row) => row.lunchId);
  return {
    episodes: new Map(
      rows.map((row) => [row.weekOf, { id: row.id, theme: row.theme?.name ?? null }]),
    ),
    lunches: new Map(
      lunches.map((lunch) => {
        const own = itemsOf.get(lunch.id) ?? [];
        const standing = own.map(({ id, foodId, part, amount, unit }) => {
          const given = verdictsOf.get(id) ?? [];
          const byChild = new Map(given.map((row) => [row.childId, verdictKey(row)]));
          return [itemKey(foodId, part, amount, unit), { id, verdicts: byChild }] as const;
        });
        const isPacked = lunch.packedAt !== null;
        const { id, date } = lunch;
        return [date, { id, isPacked, itemCount: own.length, items: new Map(standing) }];
      }),
    ),
  };
}

type ItemRow = {
  readonly id: string;
  readonly lunchId: string;
  readonly foodId: string;
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
};
type VerdictRow = {
  readonly itemId: string;
  readonly childId: string;
  readonly eaten: number | null;
  readonly face: number | null;
  readonly quote: string;
};
