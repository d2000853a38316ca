import { mediumDay, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { Forbidden, PlanItem } from "#lib/planner/index.ts";
import type { Acceptance, Learned } from "#lib/reactions/index.ts";

/** A child as the planner names it. */
type Eater = { readonly id: string; readonly onScreenName: string };

/** Standard deviations of a normal between the ends of its middle 80 %. */
const DEVIATIONS_IN_80 = 2 * 1.2816;

/** What each child is expected to eat of a food, and how surely, in the order of the children. */
export function acceptanceOf(
  learned: Learned,
  food: Food,
  children: readonly Eater[],
): PlanItem["acceptance"] {
  return children.map(({ id }) => {
    const { estimate, low, high } = learned.of(id, food.id, food.family);
    return { mean: estimate, sd: (high - low) / DEVIATIONS_IN_80 };
  });
}

/** Foods that rest for a child on some of the days: out until the date each is tried again. */
export function restingItems(
  learned: Learned,
  children: readonly Eater[],
  items: readonly PlanItem[],
  days: readonly Day[],
): Forbidden[] {
  const names = new Map(children.map(({ id, onScreenName }) => [id, onScreenName]));
  return learned.met.flatMap(({ childId, foodId, standing }: Acceptance) => {
    const child = names.get(childId);
    if (standing.kind !== "resting" || child === undefined) return [];
    const { until } = standing;
    const own = items.filter((item) => item.foodId === foodId);
    const on = days.filter((day) => day < until);
    const [first] = own;
    if (!first || on.length === 0) return [];
    return [
      {
        id: `resting:${childId}:${foodId}`,
        kind: "resting" as const,
        name: `${first.name}: resting for ${child} until ${mediumDay(until)}`,
        itemIds: own.map(({ id }) => id),
        on: on.length === days.length ? null : on,
      },
    ];
  });
}
