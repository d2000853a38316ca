import type { BoxItem } from "../box.ts";
import { COMPONENTS, creditAtSchool, type Component } from "./credit-item.ts";
import { creditingKindOf, VEGETABLE_SUBGROUPS, type VegetableSubgroup } from "./crediting-kind.ts";

/** What a lunch counts for at school. */
export type SchoolLunch = {
  readonly counts: Readonly<Record<Component, number>>;
  readonly subgroups: Readonly<Record<VegetableSubgroup, number>>;
  /** Cups of fruit that are juice. */
  readonly juice: number;
  /** Foods that count only by their recipe or maker's statement. */
  readonly unread: readonly string[];
};

/**
 * Adds up a lunch by the school crediting rules. Beans count as vegetable, or as meat alternate where the
 * lunch has no other, never as both (one or the other in a meal).
 */
export function countAtSchool(items: readonly BoxItem[]): SchoolLunch {
  const counts = noCounts();
  const subgroups = noSubgroups();
  const unread: string[] = [];
  let juice = 0;
  // By what is there, not by how much: so that more of one food never takes from another.
  const hasMeat = items.some(({ food }) => creditingKindOf(food).kind === "meat");
  for (const { food, grams } of items) {
    const credited = creditAtSchool(food, grams);
    if (credited.kind === "not-counted") {
      if (credited.why !== "nothing") unread.push(food.name);
      continue;
    }
    const { credit } = credited;
    if (credit.insteadMeat !== null && !hasMeat) {
      counts.meat += credit.insteadMeat;
      continue;
    }
    counts[credit.component] += credit.amount;
    if (credit.subgroup !== null) subgroups[credit.subgroup] += credit.amount;
    if (credit.isJuice) juice += credit.amount;
  }
  return { counts, subgroups, juice, unread };
}

/**
 * A week at school: sums, with juice counted for no more than the other fruit, so that it is at most half
 * of the fruit (7 CFR 210.10, CDE table note b).
 */
export function countWeekAtSchool(lunches: readonly SchoolLunch[]): Omit<SchoolLunch, "unread"> {
  const counts = noCounts();
  const subgroups = noSubgroups();
  for (const lunch of lunches) {
    for (const component of COMPONENTS) counts[component] += lunch.counts[component];
    for (const one of VEGETABLE_SUBGROUPS) subgroups[one] += lunch.subgroups[one];
  }
  const juice = lunches.reduce((sum, lunch) => sum + lunch.juice, 0);
  const other = counts.fruit - juice;
  counts.fruit = other + Math.min(juice, other);
  return { counts, subgroups, juice };
}

function noCounts(): Record<Component, number> {
  return { fruit: 0, vegetable: 0, grain: 0, meat: 0, milk: 0 };
}

function noSubgroups(): Record<VegetableSubgroup, number> {
  return { "dark-green": 0, "red-orange": 0, beans: 0, starchy: 0, other: 0 };
}
