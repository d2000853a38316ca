import { groupBy } from "#lib/base/index.ts";
import { monthName, MONTHS, partsOf, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import {
  readChildren,
  readRecalls,
  readSchoolRules,
  readSettings,
  type Db,
  type Recalls,
} from "#lib/db/index.ts";
import type { Forbidden, PlanItem } from "#lib/planner/index.ts";
import { ageInMonths } from "#lib/reactions/index.ts";
import { barsFor } from "#lib/safety/index.ts";

/**
 * The items that must not be planned on some days, one entry a reason. What keeps a food out is
 * lib/safety's reading alone, the same that the checks of a lunch speak from.
 */
export async function readForbidden(
  db: Db,
  foods: readonly Food[],
  items: readonly Pick<PlanItem, "id" | "foodId">[],
  days: readonly Day[],
): Promise<Forbidden[]> {
  const [children, rules, recalls, settings] = await Promise.all([
    readChildren(db),
    readSchoolRules(db),
    readRecalls(db),
    readSettings(db),
  ]);
  const { carrying, departure, lunchAt, climateC } = settings;
  const bars = barsFor(
    {
      children: children
        .filter((child) => !child.isRetired)
        .map(({ id, onScreenName, portionFactor, avoidances, birthMonth }) => ({
          ...{ id, name: onScreenName, portionFactor, avoidances },
          ageMonthsOn: (on) => (birthMonth === null ? null : ageInMonths(birthMonth, on)),
        })),
      rules: rules.filter(({ isActive }) => isActive),
      recalledFoodIds: recalledFoods(recalls),
      journey: carrying && { carrying, departure, lunchAt },
      outsideOn: (on) => {
        const mean = climateC?.[partsOf(on)[1] - 1];
        return mean === undefined ? null : { celsius: mean, isTyped: false };
      },
    },
    days,
  );
  const known = new Map<string, Food>(foods.map((food) => [food.id, food]));
  const idsOf = (isOut: (food: Food) => boolean): string[] =>
    items.flatMap((item) => {
      const food = known.get(item.foodId);
      return food && isOut(food) ? [item.id] : [];
    });
  return [
    ...bars.map(({ id, kind, name, keepsOut, on }) => ({
      ...{ id, kind, name, itemIds: idsOf(keepsOut) },
      on: on.length === days.length ? null : on,
    })),
    ...outOfSeason(days, idsOf),
  ].filter(({ itemIds }) => itemIds.length > 0);
}

/** Foods that are marked, and foods of which nothing unmarked is sold. */
function recalledFoods({ foods, foodsInPart }: Recalls): Set<string> {
  const without = [...foodsInPart].flatMap(([id, { hasOther }]) => (hasOther ? [] : [id]));
  return new Set([...foods.keys(), ...without]);
}

/** Month by month, as a week can lie in two seasons. */
function outOfSeason(
  days: readonly Day[],
  idsOf: (isOut: (food: Food) => boolean) => string[],
): Forbidden[] {
  return [...groupBy(days, monthName)].map(([name, on]) => {
    const month = MONTHS.findIndex((one) => one === name) + 1;
    return {
      id: `season:${month}`,
      kind: "season",
      name: `out of season in ${name}`,
      itemIds: idsOf((food) => food.seasonMonths !== null && !food.seasonMonths.includes(month)),
      on: on.length === days.length ? null : on,
    };
  });
}
