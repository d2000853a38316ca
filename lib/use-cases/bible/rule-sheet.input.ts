import { z } from "zod";
import { Allergen, FoodId, Trait } from "#lib/catalog/index.ts";
import { Day } from "#lib/calendar/index.ts";
import { OptionalDay, RowMark, TickedWeekdays } from "./typed-fields.input.ts";

/** A school rule as its form holds it. */
export const RuleInput = z
  .object({
    ...RowMark,
    name: z
      .string()
      .trim()
      .min(1, { error: "Say the rule in a few words, as the school does." })
      .max(120, { error: "Keep the rule under 120 letters." }),
    traits: z.array(Trait),
    allergens: z.array(Allergen),
    foods: z
      .array(z.object({ id: FoodId, name: z.string().max(200) }))
      .max(60, { error: "60 foods at most." }),
    from: OptionalDay,
    to: OptionalDay,
    /** None ticked: every day. */
    weekdays: TickedWeekdays,
    exceptDays: z.array(z.object({ day: Day })).max(60, { error: "60 days at most." }),
    isActive: z.boolean(),
  })
  .superRefine((rule, context) => {
    if (rule.from && rule.to && rule.to < rule.from) {
      context.addIssue({
        code: "custom",
        path: ["to"],
        message: "The last day lies before the first.",
      });
    }
    if (rule.traits.length + rule.allergens.length + rule.foods.length === 0) {
      const message =
        "Tick at least one mark or allergen, or add a food: a rule that names nothing keeps nothing out.";
      context.addIssue({ code: "custom", path: ["traits"], message });
    }
  });
export type RuleInput = z.infer<typeof RuleInput>;

/** A school rule to take away. */
export const RemoveRuleInput = z.object({ id: z.string().min(1).max(60) });
