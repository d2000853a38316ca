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
const Text = z.string();

/**
 * Every verdict of the series, oldest first, what was scrapped or meant for others left out. One
 * statement that answers with one text, so that ten years stay cheap.
 */
export async function readVerdicts(db: Db): Promise<VerdictRecord[]> {
  const [answer] = await db.$queryRaw<readonly { readonly rows: unknown }[]>`
    SELECT json_group_array(json_array(r."itemId", r."childId", f."id", f."familyId", l."date",
           r."eaten", r."face", i."part", i."productId", coalesce(s."amount", i."amount"), i."unit",
           (SELECT group_concat(k."trickId") FROM "ItemTrick" k WHERE k."itemId" = i."id"))) AS rows
    FROM "Reaction" r
    JOIN "LunchItem" i ON i."id" = r."itemId" AND i."fate" <> 'scrapped'
    JOIN "Lunch" l ON l."id" = i."lunchId"
    JOIN "Food" o ON o."id" = i."foodId"
    JOIN "Food" f ON f."id" = coalesce(o."mergedIntoId", o."id")
    LEFT JOIN "ItemShare" s ON s."itemId" = r."itemId" AND s."childId" = r."childId"`;
  const rows = JSON.parse(Text.parse(answer?.rows)) as unknown[];
  const days = new Map<string, Day>();
  const dayOf = (text: string): Day => {
    const known = days.get(text) ?? day(text);
    days.set(text, known);
    return known;
  };
  return rows
    .map((row): VerdictRecord => {
      const cells = Row.parse(row);
      const [itemId, childId, foodId, familyId, date, eaten, face, part, ...rest] = cells;
      const [productId, amount, unit, tricks] = rest;
      return {
        ...{ itemId, childId, foodId, familyId, day: dayOf(date), part, productId, amount, unit },
        ...{ eaten: eaten satisfies Eaten | null, face },
        trickIds: tricks?.split(",") ?? [],
      };
    })
    .sort((one, other) => order(one.day, other.day) || order(one.childId, other.childId));
}

function order(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
