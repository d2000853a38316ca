import type { Random } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Forbidden, PlanItem, Quota, RestGroup } from "#lib/planner/index.ts";
import type { InstanceSize, MadeItem } from "./plan-instance.ts";

/** Food, family and trick rests; what was shown last counts. */
export function makeRests(made: readonly MadeItem[]): RestGroup[] {
  const groups = (
    level: RestGroup["level"],
    restDays: number,
    idsOf: (item: PlanItem) => readonly string[],
  ): RestGroup[] => {
    const members = new Map<string, MadeItem[]>();
    for (const entry of made) {
      for (const id of idsOf(entry.item)) members.set(id, [...(members.get(id) ?? []), entry]);
    }
    return [...members].map(([id, entries]) => ({
      id: `${level}:${id}`,
      level,
      name: id,
      restDays,
      itemIds: entries.map(({ item }) => item.id),
      shownOn:
        level === "trick" ? [] : [...new Set(entries.flatMap(({ shownOn }) => shownOn.slice(-1)))],
    }));
  };
  return [
    ...groups("food", 14, (item) => [item.foodId]),
    ...groups("family", 2, (item) => [item.familyId]),
    ...groups("trick", 5, (item) => item.trickIds),
  ];
}

/** A comfort per child, one oven, beans and sweets. */
export function makeQuotas(
  size: InstanceSize,
  random: Random,
  items: readonly PlanItem[],
): Quota[] {
  const ids = (share: number): string[] =>
    items.filter(() => random.next() < share).map(({ id }) => id);
  const comfort = Array.from({ length: size.children }, (_, child): Quota => ({
    id: `comfort-${child}`,
    name: `Child ${child} gets something they like`,
    scope: "lunch",
    itemIds: items.filter((item) => (item.acceptance[child]?.mean ?? 0) >= 0.6).map(({ id }) => id),
    min: 1,
    max: null,
    on: null,
  }));
  return [
    ...comfort,
    { id: "oven", name: "one oven", scope: "lunch", itemIds: ids(0.12), min: 0, max: 1, on: null },
    {
      id: "beans",
      name: "beans twice a week",
      scope: "week",
      itemIds: ids(0.1),
      min: size.items < 50 ? 0 : 2,
      max: null,
      on: null,
    },
    {
      id: "sweets",
      name: "sweets once a week",
      scope: "week",
      itemIds: ids(0.06),
      min: 0,
      max: 1,
      on: null,
    },
  ];
}

/** One rule of each kind, each with its share of the items. */
export function makeForbidden(
  size: InstanceSize,
  days: readonly Day[],
  sample: (count: number) => string[],
): Forbidden[] {
  const some = (share: number): string[] => sample(Math.floor(size.items * share));
  return [
    {
      id: "sesame",
      kind: "allergen",
      name: "Child 1 avoids sesame",
      itemIds: some(0.06),
      on: null,
    },
    {
      id: "nuts",
      kind: "school",
      name: "the school's nut-free table",
      itemIds: some(0.05),
      on: null,
    },
    {
      id: "grapes",
      kind: "choking",
      name: "round and firm under five",
      itemIds: some(0.03),
      on: null,
    },
    { id: "season", kind: "season", name: "out of season", itemIds: some(0.14), on: null },
    {
      id: "cold",
      kind: "temperature",
      name: "no way to keep it hot",
      itemIds: some(0.08),
      on: days.filter((_, place) => place % 5 === 4),
    },
  ];
}
