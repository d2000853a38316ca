import { stringify } from "csv-stringify/sync";
import type { Db } from "#lib/db/index.ts";
import { PAST_FIELDS, type PastField } from "./past.input.ts";
import { EATEN_TEXT } from "./read-cells.ts";

/**
 * Every packed lunch as comma-separated values by RFC 4180: a line for each verdict, one for an item
 * nobody judged. Children go by their on-screen names. Read in again, the same file changes nothing.
 */
export async function exportPast({ db }: { readonly db: Db }): Promise<string> {
  const rows = await db.$queryRaw<readonly PastRow[]>`
    SELECT l."date" AS date, COALESCE(t."name", '') AS theme, f."name" AS item, i."amount" AS amount,
      i."unit" AS unit, i."part" AS part,
      COALESCE((SELECT group_concat(name, ';') FROM (SELECT k."name" AS name FROM "ItemTrick" x
        JOIN "Trick" k ON k."id" = x."trickId" WHERE x."itemId" = i."id" ORDER BY k."id")), '') AS trick,
      COALESCE(s."name", '') AS shop, COALESCE(c."onScreenName", '') AS child, r."eaten" AS eaten,
      r."face" AS face, COALESCE(r."quote", '') AS quote
    FROM "Lunch" l JOIN "Episode" e ON e."id" = l."episodeId" JOIN "LunchItem" i ON i."lunchId" = l."id"
      JOIN "Food" f ON f."id" = i."foodId" LEFT JOIN "Theme" t ON t."id" = e."themeId"
      LEFT JOIN "Shop" s ON s."id" = i."shopId" LEFT JOIN "Reaction" r ON r."itemId" = i."id"
      LEFT JOIN "Child" c ON c."id" = r."childId"
    WHERE l."packedAt" IS NOT NULL AND i."fate" <> 'scrapped'
    ORDER BY l."date", i."position", i."id", c."position", c."id"`;
  const written = rows.map((row) => ({
    ...row,
    amount: String(row.amount),
    eaten: row.eaten === null ? "" : (EATEN_TEXT[row.eaten] ?? ""),
    face: row.face === null ? "" : String(row.face),
  }));
  return stringify(written, {
    columns: [...PAST_FIELDS],
    header: true,
    record_delimiter: "windows",
    quoted_match: /[\r\n]/,
  });
}

type PastRow = Readonly<Record<Exclude<PastField, "amount" | "eaten" | "face">, string>> & {
  readonly amount: number;
  readonly eaten: number | null;
  readonly face: number | null;
};
