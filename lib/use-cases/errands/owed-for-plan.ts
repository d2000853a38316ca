import { weeksLater, type Day } from "#lib/calendar/index.ts";
import { readErrandWeek, type Db } from "#lib/db/index.ts";
import type { Owed, PlanItem } from "#lib/planner/index.ts";
import { leftoversOf } from "#lib/shopping/index.ts";
import { readOwed } from "./load-owed.ts";
import { foodOf } from "./week-problem.ts";

/** Less than this of a leftover is not worth planning a lunch around (common practice, no source). */
const LEFTOVER_GRAMS_MIN = 20;
/** Scrapped food presses more than what a pack leaves over. */
const LEFTOVER_URGENCY = 0.5;

/**
 * What the planner should use up from a Monday on: scrapped food that is still owed, and what the runs of
 * the week before will leave over. Food whose last day is before that Monday is not offered.
 */
export async function owedForPlan(db: Db, first: Day, items: readonly PlanItem[]): Promise<Owed[]> {
  const [owed, before] = await Promise.all([
    readOwed(db, first),
    readErrandWeek(db, weeksLater(first, -1)),
  ]);
  const offer = (id: string, name: string, foodId: string, useBy: Day | null, urgency: number) => {
    const itemIds = items.filter((item) => item.foodId === foodId).map((item) => item.id);
    const isOver = useBy !== null && useBy < first;
    return itemIds.length === 0 || isOver ? [] : [{ id, name, itemIds, useBy, urgency }];
  };
  return [
    ...owed.flatMap((food) => offer(food.id, food.foodName, food.foodId, food.useBy, 1)),
    ...leftoversOf(before.standing?.plan.runs ?? [], LEFTOVER_GRAMS_MIN)
      .filter((left) => left.useBy !== null)
      .flatMap((left) =>
        offer(left.lineId, left.name, foodOf({ id: left.itemId }), left.useBy, LEFTOVER_URGENCY),
      ),
  ];
}
