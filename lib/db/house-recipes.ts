import { z } from "zod";
import { PrepStep } from "#lib/catalog/index.ts";
import type { Db } from "./client.ts";
import { parseColumn } from "./json.ts";

/**
 * House recipes among some foods, by name: what has ingredients typed, and foods of the user's own with
 * the steps they are made in.
 */
export async function readHouseRecipes(db: Db, foodIds: readonly string[]) {
  const rows = await db.food.findMany({
    where: {
      id: { in: [...foodIds] },
      OR: [{ ingredients: { not: "" } }, { catalogueVersion: null, stepsJson: { not: "[]" } }],
    },
    orderBy: { name: "asc" },
    select: { id: true, name: true, ingredients: true, stepsJson: true },
  });
  return rows.map(({ stepsJson, ...row }) => ({
    ...row,
    steps: parseColumn(z.array(PrepStep), stepsJson, "Food.steps"),
  }));
}
