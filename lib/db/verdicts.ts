import { z } from "zod";
import { day, type Day } from "#lib/calendar/index.ts";
import { Part } from "#lib/catalog/index.ts";
import type { Eaten, Verdict } from "#lib/reactions/index.ts";
import type { Db } from "./client.ts";

/** A verdict with the item it was given on. A merged food speaks as the one it was merged into. */
export type VerdictRecord = Verdict & {
  readonly itemId: string;
  readonly part: Part;
  readonly productId: string | null;
  /** That child's amount as written, its portion factor not applied. */
  readonly amount: number;
  readonly unit: string;
  readonly trickIds: readonly string[];
};

const Row = z.tuple([
  z.string(),
  z.string(),
  z.string(),
  z.string(),
  z.string(),
  z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]).nullable(),
  z.number().min(0).max(100).nullable(),
  Part,
  z.string().nullable(),
  z.number(),
  z.string(),
  z.string().nullable(),
]);
/** By year, oldest first: its stamp, the one of what concerns all years, and its rows unless they are known. */
const Years = z.array(
  z.object({ year: z.string(), stamp: z.string(), all: z.string(), rows: z.string().nullable() }),
);

/** The verdicts of one year, and the stamp under which they stand. */
type Block = { readonly stamp: string; readonly verdicts: readonly VerdictRecord[] };
type Kept = {
  /** The stamp of what concerns all years. */
  readonly all: string;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly verdicts: readonly VerdictRecord[];
};

/**
 * What was read last, whoever asked. A stamp is drawn at random whenever a year's verdicts change (the
 * triggers of migration 0008), so equal stamps mean equal verdicts in any file and any transaction.
 */
let kept: Kept = { all: "", blocks: new Map(), verdicts: [] };

/**
 * Every verdict of the series, oldest first, what was scrapped or meant for others left out. Only years
 * whose verdicts changed since they were last read are read again; while none did, the answer is the very
 * same list. It is shared: nobody may change it.
 */
export async function readVerdicts(db: Db): Promise<readonly VerdictRecord[]> {
  const before = kept;
  const years = await readYears(db, before);
  const blocks = new Map(
    years.map(({ year, stamp, rows }): [string, Block] => {
      const known = rows === null ? before.blocks.get(year) : undefined;
      return [year, known ?? { stamp, verdicts: verdictsOf(rows ?? "[]") }];
    }),
  );
  const isSame =
    blocks.size === before.blocks.size &&
    [...blocks].every(([year, block]) => before.blocks.get(year) === block);
  if (isSame) return before.verdicts;
  const verdicts = [...blocks.values()].flatMap((block) => block.verdicts);
  kept = { all: years[0]?.all ?? "", blocks, verdicts };
  return verdicts;
}

/**
 * One statement tells the stamps and reads what they call for, so that no write can come between; a year
 * answers with one text, so that ten stay cheap.
 */
async function readYears(db: Db, { all, blocks }: Kept): Promise<z.infer<typeof Years>> {
  const known = JSON.stringify(
    Object.fromEntries([...blocks].map(([year, { stamp }]) => [year, stamp])),
  );
  const years = await db.$queryRaw`
    SELECT v."year", v."stamp", a."stamp" AS "all",
           CASE WHEN a."stamp" <> ${all}
                  OR v."stamp" IS NOT (SELECT value FROM json_each(${known}) WHERE key = v."year")
           THEN (
      SELECT json_group_array(
               json_array(r."itemId", r."childId", f."id", f."familyId", l."date", r."eaten", r."face",
                          i."part", i."productId", coalesce(s."amount", i."amount"), i."unit",
                          (SELECT group_concat(k."trickId") FROM "ItemTrick" k WHERE k."itemId" = i."id"))
               ORDER BY l."date", r."childId", r.rowid)
      FROM "Lunch" l
      JOIN "LunchItem" i ON i."lunchId" = l."id" AND i."fate" <> 'scrapped'
      JOIN "Reaction" r ON r."itemId" = i."id"
      JOIN "Food" o ON o."id" = i."foodId"
      JOIN "Food" f ON f."id" = coalesce(o."mergedIntoId", o."id")
      LEFT JOIN "ItemShare" s ON s."itemId" = r."itemId" AND s."childId" = r."childId"
      WHERE l."date" >= v."year" AND l."date" < v."year" || '~') END AS rows
    FROM "VerdictYear" v JOIN "VerdictYear" a ON a."year" = ''
    WHERE v."year" <> '' ORDER BY v."year"`;
  return Years.parse(years);
}

/** The verdicts of one year from the text of its rows, each row checked. */
function verdictsOf(text: string): readonly VerdictRecord[] {
  const days = new Map<string, Day>();
  const dayOf = (date: string): Day => {
    const known = days.get(date) ?? day(date);
    days.set(date, known);
    return known;
  };
  return (JSON.parse(text) as unknown[]).map((row): VerdictRecord => {
    const cells = Row.parse(row);
    const [itemId, childId, foodId, familyId, date, eaten, face, part, ...rest] = cells;
    const [productId, amount, unit, tricks] = rest;
    // One literal without spreads: V8 then keeps all of them in one shape, which ten years fold over in
    // a quarter of the time.
    return {
      itemId,
      childId,
      foodId,
      familyId,
      day: dayOf(date),
      part,
      productId,
      amount,
      unit,
      eaten: eaten satisfies Eaten | null,
      face,
      trickIds: tricks?.split(",") ?? [],
    };
  });
}
