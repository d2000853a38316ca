import type { Food } from "#lib/catalog/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { mayHold } from "./allergens/holds.ts";
import type { Avoidance, ChildProfile } from "./child.ts";
import { ruleHolds, ruleNames, type SchoolRule } from "./school-rule.ts";

/**
 * The hard filter for many foods: false when an avoidance of any child other than a dislike, or a
 * rule in force that day, speaks against the food. True is no promise: the label and the school decide.
 */
export function hardFilter(
  children: readonly ChildProfile[],
  rules: readonly SchoolRule[],
  day: Day,
): (food: Food) => boolean {
  const hard = children
    .flatMap((child) => child.avoidances)
    .filter((a) => a.severity !== "dislike");
  const inForce = rules.filter((rule) => ruleHolds(rule, day));
  return (food) =>
    !hard.some((avoidance) => isMet(avoidance, food)) &&
    !inForce.some((rule) => ruleNames(rule, food));
}

/** One food against the hard filter; prefer `hardFilter` for many. */
export function isAllowed(
  food: Food,
  children: readonly ChildProfile[],
  rules: readonly SchoolRule[],
  day: Day,
): boolean {
  return hardFilter(children, rules, day)(food);
}

/** "Maybe" and a telling name count against severe and allergy, as a missing warning on a label proves nothing (FDA). */
function isMet(avoidance: Avoidance, food: Food): boolean {
  if ("food" in avoidance) return food.id === avoidance.food;
  if ("family" in avoidance) return food.family === avoidance.family;
  const { allergen, severity } = avoidance;
  return severity === "avoid" ? food.allergens.includes(allergen) : mayHold(food, allergen);
}
