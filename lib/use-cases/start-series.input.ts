import { z } from "zod";
import { Allergen } from "#lib/catalog/index.ts";
import { ClockTime } from "#lib/calendar/index.ts";
import { givesAway } from "#lib/safety/index.ts";
import {
  BirthMonth,
  ON_SCREEN_NAME_EMPTY,
  ON_SCREEN_NAME_GIVES_AWAY,
  PRIVATE_NAME_EMPTY,
} from "./bible/child-sheet.input.ts";
import { DayOffInput } from "./bible/settings-sheets.input.ts";
import { nameField, TickedWeekdays } from "./bible/typed-fields.input.ts";

const ChildInput = z.object({
  privateName: nameField(PRIVATE_NAME_EMPTY),
  onScreenName: nameField(ON_SCREEN_NAME_EMPTY),
  birthMonth: BirthMonth.default(""),
  allergens: z.array(Allergen).default([]),
});

const ShopInput = z.object({
  name: nameField("Write the shop's name, or take the line out."),
  days: TickedWeekdays,
});

/** A series to start: everything but its name can wait. */
export const StartSeriesInput = z
  .object({
    name: nameField("Give the series a name. It can be changed later."),
    departure: ClockTime.optional(),
    children: z.array(ChildInput).max(8, { error: "Eight children at most." }).default([]),
    /** Which of our suggested school rules to begin with. */
    ruleStarts: z.array(z.string().max(40)).max(40).default([]),
    shops: z.array(ShopInput).max(30, { error: "30 shops at most." }).default([]),
    schoolDays: TickedWeekdays.default([1, 2, 3, 4, 5]),
    daysOff: z.array(DayOffInput).max(100, { error: "100 spans at most." }).default([]),
  })
  .superRefine(({ children }, context) => {
    children.forEach((child, index) => {
      if (children.some(({ privateName }) => givesAway(child.onScreenName, privateName))) {
        const path = ["children", index, "onScreenName"];
        context.addIssue({ code: "custom", path, message: ON_SCREEN_NAME_GIVES_AWAY });
      }
    });
  });
export type StartSeriesInput = z.infer<typeof StartSeriesInput>;
/** The same as its form holds it. */
export type TypedStart = z.input<typeof StartSeriesInput>;
