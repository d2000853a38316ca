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
/** Every year there is, oldest first: its stamp, that of all years, and its rows when they are not known. */
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
 * triggers of migration 0008), so equal stamps mean equal verdicts in any file and transaction.
 */
let kept: Kept = { all: "", blocks: new Map(), verdicts: [] };

/**
 * Every verdict of the series, oldest first, what was scrapped or meant for others left out. Only years
 * whose verdicts changed since they were last read are read again; while none did, the answer is the very
 * same list. It is shared: nobody may change it. One statement tells the stamps and reads what they call
 * for, so that no write can come between.
 */
export async function readVerdicts(db: Db): Promise<readonly VerdictRecord[]> {
  const before = kept;
  const known = JSON.stringify([...before.blocks.values()].map(({ stamp }) => stamp));
  const years = Years.parse(
    await db.$queryRaw`
    SELECT v."year", v."stamp", a."stamp" AS "all",
           CASE WHEN a."stamp" <> ${before.all} OR v."stamp" NOT IN (SELECT value FROM json_each(${known}))
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
    WHERE v."year" <> '' ORDER BY v."year"`,
  );
  const blocks = new Map<string, Block>();
  for (const { year, stamp, rows } of years) {
    const block = rows === null ? before.blocks.get(year) : undefined;
    blocks.set(year, block ?? { stamp, verdicts: verdictsOf(rows ?? "[]") });
  }
  const all = years[0]?.all ?? "";
  const isSame =
    all === before.all && [...blocks].every(([year, block]) => before.blocks.get(year) === block);
  if (isSame && blocks.size === before.blocks.size) return before.verdicts;
  const verdicts = [...blocks.values()].flatMap((block) => block.verdicts);
  kept = { all, blocks, verdicts };
  return verdicts;
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
    // a fifth of the time.
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
