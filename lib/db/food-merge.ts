import { z } from "zod";
import type { Db } from "./client.ts";

/** Tables whose rows speak of a food by `foodId` and follow it when it is merged. */
const FOLLOWERS = [
  "LunchItem",
  "Stock",
  "Product",
  "ErrandLine",
  "Avoidance",
  "PrepTiming",
] as const;

/** The ids of the rows that followed a merged food, by table. */
export const FoodFollowers = z.object({
  LunchItem: z.array(z.string()),
  Stock: z.array(z.string()),
  Product: z.array(z.string()),
  ErrandLine: z.array(z.string()),
  Avoidance: z.array(z.string()),
  PrepTiming: z.array(z.string()),
} satisfies Record<(typeof FOLLOWERS)[number], z.ZodType>);
export type FoodFollowers = z.infer<typeof FoodFollowers>;

/** Hands everything that speaks of food `from` over to food `into`, and tells which rows those were. */
export async function handOverFood(db: Db, from: string, into: string): Promise<FoodFollowers> {
  const moved: Record<string, string[]> = {};
  for (const table of FOLLOWERS) {
    const rows = await db.$queryRawUnsafe<readonly { readonly id: string }[]>(
      `SELECT "id" FROM "${table}" WHERE "foodId" = ?`,
      from,
    );
    moved[table] = rows.map(({ id }) => id);
    await db.$executeRawUnsafe(`UPDATE "${table}" SET "foodId" = ? WHERE "foodId" = ?`, into, from);
  }
  return FoodFollowers.parse(moved);
}

/** Gives rows that followed a merge back, as far as they still stand with the food they went to. */
export async function handBackFood(
  db: Db,
  followers: FoodFollowers,
  from: string,
  into: string,
): Promise<void> {
  for (const table of FOLLOWERS) {
    await db.$executeRawUnsafe(
      `UPDATE "${table}" SET "foodId" = ? WHERE "foodId" = ? AND "id" IN (SELECT value FROM json_each(?))`,
      from,
      into,
      JSON.stringify(followers[table]),
    );
  }
}
