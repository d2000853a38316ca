import { z } from "zod";
import { Allergen } from "#lib/catalog/index.ts";
import { ClockTime } from "#lib/calendar/index.ts";

const Name = z.string().trim().max(80, { error: "Keep the name under 80 letters." });

const ChildInput = z.object({
  privateName: Name.min(1, { error: "Write the name you call this child at home." }),
  onScreenName: Name.min(1, { error: "Write the name this child has on screen." }),
  birthMonth: z
    .string()
    .regex(/^(\d{4}-(0[1-9]|1[0-2]))?$/, {
      error: "Use year-month, like 2019-04, or leave it empty.",
    })
    .default(""),
  allergens: z.array(Allergen).default([]),
});

/** A series to start: everything but its name can wait. */
export const StartSeriesInput = z
  .object({
    name: Name.min(1, { error: "Give the series a name. It can be changed later." }),
    departure: ClockTime.optional(),
    children: z.array(ChildInput).max(8, { error: "Eight children at most." }).default([]),
  })
  .superRefine((input, context) => {
    input.children.forEach((child, index) => {
      if (child.privateName.toLowerCase() === child.onScreenName.toLowerCase()) {
        context.addIssue({
          code: "custom",
          path: ["children", index, "onScreenName"],
          message: "Choose another name for the screen: the private name never leaves the house.",
        });
      }
    });
  });
export type StartSeriesInput = z.infer<typeof StartSeriesInput>;
