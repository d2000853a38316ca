import { z } from "zod";
import { Allergen, FoodId, Trait, type Food } from "#lib/catalog/index.ts";
import { mayHold } from "./allergens/holds.ts";
import { Day, weekdayOf } from "#lib/calendar/index.ts";

/** A rule of the school: a food with any of the listed marks may not come on the days it holds. */
export const SchoolRule = z.object({
  name: z.string().min(1).max(120),
  traits: z.array(Trait),
  allergens: z.array(Allergen),
  foods: z.array(FoodId),
  /** First and last day it holds; null: no end on that side. */
  from: Day.nullable(),
  to: Day.nullable(),
  /** ISO weekdays 1–7; null: every day. */
  weekdays: z.array(z.number().int().min(1).max(7)).nullable(),
  /** Days it is lifted, such as birthdays. */
  exceptDays: z.array(Day),
});
export type SchoolRule = z.infer<typeof SchoolRule>;

/** The rest of a rule that names nothing yet and holds every day. */
export const UNLIMITED_RULE = {
  ...{ traits: [], allergens: [], foods: [] },
  ...{ from: null, to: null, weekdays: null, exceptDays: [] },
} satisfies Omit<SchoolRule, "name">;

/** True when the rule holds on that day. */
export function ruleHolds(rule: SchoolRule, day: Day): boolean {
  if (rule.from !== null && day < rule.from) return false;
  if (rule.to !== null && day > rule.to) return false;
  if (rule.exceptDays.includes(day)) return false;
  return rule.weekdays === null || rule.weekdays.includes(weekdayOf(day));
}

/** True when the rule speaks of this food; an allergen in some makes, or in the food's name alone, counts. */
export function ruleNames(rule: SchoolRule, food: Food): boolean {
  return (
    rule.foods.includes(food.id) ||
    rule.traits.some((trait) => food.traits.includes(trait)) ||
    rule.allergens.some((allergen) => mayHold(food, allergen))
  );
}
