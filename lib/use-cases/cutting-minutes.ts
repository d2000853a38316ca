import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { PlanItem } from "#lib/planner/index.ts";
import { ageInMonths } from "#lib/reactions/index.ts";
import { guidanceFor } from "#lib/safety/index.ts";

/** Hands-on minutes of cutting a family batch as guidance on choking asks (common practice, no source). */
const CUTTING_MINUTES = 3;

/**
 * The items with the morning's cutting added where a child on the day is under the age that guidance
 * speaks of: what must be quartered or cut thin costs the planner its minutes.
 */
export function withCutting(
  items: readonly PlanItem[],
  foods: readonly Food[],
  birthMonths: readonly (string | null)[],
  on: Day,
): PlanItem[] {
  const ages = birthMonths.flatMap((month) => (month === null ? [] : [ageInMonths(month, on)]));
  const youngest = Math.min(...ages, Infinity);
  const cut = new Set<string>(
    foods
      .filter((food) => {
        const guidance = guidanceFor(food);
        return guidance && !guidance.isNotServed && youngest < guidance.underMonths;
      })
      .map(({ id }) => id),
  );
  return items.map((item) =>
    cut.has(item.foodId) ? { ...item, minutes: item.minutes + CUTTING_MINUTES } : item,
  );
}
