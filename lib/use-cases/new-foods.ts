import type { Day } from "#lib/calendar/index.ts";
import type { Settings } from "#lib/db/index.ts";
import type { Forbidden, PlanItem, PlanPart, PlanProblem } from "#lib/planner/index.ts";

/** New foods there must be to choose from for each week that is to bring one. */
const CHOICE = 2;

type Ground = {
  readonly parts: readonly PlanPart[];
  readonly forbidden: readonly Forbidden[];
  readonly days: readonly Day[];
  readonly weeks: number;
  readonly settings: Settings;
};

/**
 * Marks the items whose food no child has met, and says how many of them a lunch and a week may hold
 * and must. Where the known foods of a part cannot fill the days, as in a series that has just begun,
 * its foods do not count as new: the limits would leave nothing to plan.
 */
export function withNewFoods(
  items: readonly PlanItem[],
  isMet: (foodId: string) => boolean,
  { parts, forbidden, days, weeks, settings }: Ground,
): Pick<PlanProblem, "items" | "newFoods"> {
  const out = new Set(forbidden.flatMap(({ itemIds }) => itemIds));
  const usable = items.filter(({ id }) => !out.has(id));
  const counted = new Set(
    parts
      .filter(({ part, min }) => {
        const known = usable.filter((item) => item.part === part && isMet(item.foodId));
        return known.length >= min * days.length;
      })
      .map(({ part }) => part),
  );
  const isNew = ({ part, foodId }: PlanItem): boolean => counted.has(part) && !isMet(foodId);
  const { newFoodsPerLunchMax, newFoodsPerWeekMax, wantsDiscoveries } = settings;
  const canBring =
    Math.min(newFoodsPerLunchMax, newFoodsPerWeekMax) > 0 &&
    usable.filter(isNew).length >= CHOICE * weeks;
  return {
    items: items.map((item) => ({ ...item, isNew: isNew(item) })),
    newFoods: {
      perLunchMax: newFoodsPerLunchMax,
      perWeekMax: newFoodsPerWeekMax,
      perWeekMin: wantsDiscoveries && canBring ? 1 : 0,
    },
  };
}
