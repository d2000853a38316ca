import { randomFrom } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { DemoLunch, DemoLunchItem, DemoTiming } from "./records.ts";

const DAYS_NOTED = 28;
/** This kitchen against the usual minutes: a little slower, never the same twice. */
const SLOWEST = 1.6;
const FASTEST = 0.9;

/**
 * The minutes noted in the last four weeks for what was done by hand, the same for the same day; drawn
 * from a seed of their own, so that nothing else in the story changes with them.
 */
export function noteMinutes(
  lunches: readonly DemoLunch[],
  items: readonly DemoLunchItem[],
  foods: ReadonlyMap<string, Food>,
  today: Day,
): DemoTiming[] {
  const random = randomFrom("tin harbour kitchen");
  const days = new Map(lunches.map(({ id, date }) => [id, date]));
  const notes = items.flatMap((item) => {
    const on = days.get(item.lunchId);
    const steps = foods.get(item.foodId)?.prepSteps ?? [];
    if (!on || on >= today || on < addDays(today, -DAYS_NOTED) || item.fate === "scrapped")
      return [];
    return steps
      .filter(({ handsOn }) => handsOn)
      .map((step): DemoTiming => {
        const factor = FASTEST + (SLOWEST - FASTEST) * random.next();
        const minutes = Math.max(1, Math.round(step.minutes * factor));
        const id = `${item.lunchId}:${item.foodId}/${step.name}`;
        return { id, foodId: item.foodId, step: step.name, minutes, on };
      });
  });
  // A food in two places of a lunch is prepared once.
  return [...new Map(notes.map((note) => [note.id, note])).values()];
}
