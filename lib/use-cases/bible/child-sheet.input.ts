import { z } from "zod";
import { Allergen } from "#lib/catalog/index.ts";
import { givesAway, Severity } from "#lib/safety/index.ts";
import { nameField, RowMark, textField } from "./typed-fields.input.ts";

/** Year and month, or empty when not said. */
export const BirthMonth = z.string().regex(/^((19|20|21)\d{2}-(0[1-9]|1[0-2]))?$/, {
  error: "Use year-month, like 2019-04, or leave it empty.",
});

export const PRIVATE_NAME_EMPTY = "Write the name you call this child at home.";
export const ON_SCREEN_NAME_EMPTY = "Write the name this child has on screen.";
export const ON_SCREEN_NAME_GIVES_AWAY =
  "Choose another name for the screen: the private name never leaves the house.";

const AvoidanceInput = z
  .object({
    kind: z.enum(["allergen", "food", "family"]),
    what: z.string().max(120),
    /** The food's name as it was chosen, for showing; never stored. */
    label: z.string().max(200).default(""),
    severity: Severity,
    note: textField(300),
  })
  .superRefine(({ kind, what }, context) => {
    const isSaid = kind === "allergen" ? Allergen.safeParse(what).success : what !== "";
    if (!isSaid) context.addIssue({ code: "custom", path: ["what"], message: "Choose what." });
  });

/** A child's sheet of the series bible. */
export const ChildInput = z
  .object({
    ...RowMark,
    privateName: nameField(PRIVATE_NAME_EMPTY),
    onScreenName: nameField(ON_SCREEN_NAME_EMPTY),
    birthMonth: BirthMonth,
    portionFactor: z
      .number({ error: "Write a number such as 0.8." })
      .min(0.25, { error: "0.25 at least." })
      .max(3, { error: "3 at most." }),
    /** How many faces its verdicts show; empty: by age. */
    facePoints: z.enum(["", "3", "5", "7"]),
    avoidances: z.array(AvoidanceInput).max(60, { error: "60 lines at most." }),
  })
  .superRefine((child, context) => {
    if (givesAway(child.onScreenName, child.privateName)) {
      const path = ["onScreenName"];
      context.addIssue({ code: "custom", path, message: ON_SCREEN_NAME_GIVES_AWAY });
    }
    const seen = new Set<string>();
    child.avoidances.forEach(({ kind, what }, index) => {
      const key = `${kind} ${what}`;
      if (what !== "" && seen.has(key)) {
        const path = ["avoidances", index, "what"];
        context.addIssue({ code: "custom", path, message: "This stands above already." });
      }
      seen.add(key);
    });
  });
export type ChildInput = z.infer<typeof ChildInput>;

/** A row to retire or bring back. */
export const RetireInput = z.object({ id: z.string().min(1).max(60), isRetired: z.boolean() });
export type RetireInput = z.infer<typeof RetireInput>;
