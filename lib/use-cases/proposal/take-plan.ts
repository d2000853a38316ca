import { readFoods, inTransaction } from "#lib/db/index.ts";
import type { Plan, PlanProblem } from "#lib/planner/index.ts";
import type { Context } from "../context.ts";
import { pencilWeek } from "../pencil-week.ts";

/** Pencils a plan into its weeks; weeks that have an episode by now are left alone. Returns how many. */
export async function takePlan(
  context: Context,
  problem: PlanProblem,
  plan: Plan,
): Promise<number> {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const foods = new Map((await readFoods(context.db)).map((food) => [String(food.id), food]));
  let taken = 0;
  for (const week of plan.weeks) {
    const input = { monday: week.monday, themeId: week.themeId ?? "", title: "" };
    const pencilled = await pencilWeek(context, input);
    if (!pencilled.ok) continue;
    taken += 1;
    await inTransaction(context.db, async (tx) => {
      for (const lunch of week.lunches) {
        const row = await tx.lunch.findUniqueOrThrow({ where: { date: lunch.date } });
        const data = lunch.itemIds.flatMap((id, position) => {
          const item = items.get(id);
          if (!item) return [];
          const { foodId, part } = item;
          const amount = Math.round(foods.get(foodId)?.servingGrams ?? 0);
          return { lunchId: row.id, foodId, part, position, amount, unit: "g" };
        });
        await tx.lunchItem.createMany({ data });
      }
    });
  }
  return taken;
}
