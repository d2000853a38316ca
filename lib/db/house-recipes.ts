import { z } from "zod";
import { PrepStep } from "#lib/catalog/index.ts";
import type { Db } from "./client.ts";
import { parseColumn } from "./json.ts";

/** Foods of the user's own among some foods, with the steps they are made in; those without steps are left out. */
export async function readHouseRecipes(db: Db, foodIds: readonly string[]) {
  const rows = await db.food.findMany({
    where: { id: { in: [...foodIds] }, catalogueVersion: null },
    orderBy: { name: "asc" },
    select: { id: true, name: true, stepsJson: true },
  });
  return rows
    .map(({ id, name, stepsJson }) => ({
      ...{ id, name },
      steps: parseColumn(z.array(PrepStep), stepsJson, "Food.steps"),
    }))
    .filter(({ steps }) => steps.length > 0);
}
