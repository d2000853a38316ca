import { groupBy } from "#lib/base/index.ts";
import { monthName, MONTHS, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { readChildren, readSchoolRules, type AvoidanceRecord, type Db } from "#lib/db/index.ts";
import type { Forbidden, PlanItem } from "#lib/planner/index.ts";
import { hardFilter, ruleHolds, type ChildProfile, type SchoolRule } from "#lib/safety/index.ts";

/**
 * The items that must not be planned on some days, one entry a reason. What an avoidance or a rule
 * keeps out is lib/safety's reading alone: each is asked by itself, so that the planner can name it.
 */
export async function readForbidden(
  db: Db,
  foods: readonly Food[],
  items: readonly PlanItem[],
  days: readonly Day[],
): Promise<Forbidden[]> {
  const [children, rules] = await Promise.all([readChildren(db), readSchoolRules(db)]);
  const known = new Map<string, Food>(foods.map((food) => [food.id, food]));
  const idsOf = (isOut: (food: Food) => boolean): string[] =>
    items.flatMap((item) => {
      const food = known.get(item.foodId);
      return food && isOut(food) ? [item.id] : [];
    });
  // An avoidance holds on every day alike, so any day does for asking.
  const [anyDay] = days;
  if (anyDay === undefined) return [];
  return [
    ...children
      .filter((child) => !child.isRetired)
      .flatMap((child) =>
        child.avoidances.map((record) => {
          const profile: ChildProfile = {
            id: child.id,
            name: child.onScreenName,
            avoidances: [record.avoidance],
          };
          const isAllowed = hardFilter([profile], [], anyDay);
          return {
            id: record.id,
            kind: kindOf(record),
            name: `${child.onScreenName} avoids ${record.what}`,
            itemIds: idsOf((food) => !isAllowed(food)),
            on: null,
          };
        }),
      ),
    ...rules
      .filter(({ isActive }) => isActive)
      .flatMap(({ id, rule }) => forbiddenByRule(id, rule, days, idsOf)),
    ...outOfSeason(days, idsOf),
  ].filter(({ itemIds }) => itemIds.length > 0);
}

function kindOf({ avoidance }: AvoidanceRecord): "allergen" | "avoidance" {
  return "allergen" in avoidance ? "allergen" : "avoidance";
}

function forbiddenByRule(
  id: string,
  rule: SchoolRule,
  days: readonly Day[],
  idsOf: (isOut: (food: Food) => boolean) => string[],
): Forbidden[] {
  const on = days.filter((day) => ruleHolds(rule, day));
  const [first] = on;
  if (first === undefined) return [];
  const isAllowed = hardFilter([], [rule], first);
  return [
    {
      id,
      kind: "school",
      name: rule.name,
      itemIds: idsOf((food) => !isAllowed(food)),
      on: on.length === days.length ? null : on,
    },
  ];
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
