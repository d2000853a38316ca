import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { AIMS, type Aim } from "#lib/planner/index.ts";

const month = Day;
const place = { month, date: Day, itemId: z.string().min(1) };
const item = { month, itemId: z.string().min(1) };

/** Slider positions by aim; an aim left out stays as it is. */
const Sliders = z.partialRecord(z.enum(AIMS), z.coerce.number().min(0).max(3));

/** One step on the desk of a proposal. */
export const ChangeProposalInput = z.discriminatedUnion("step", [
  /** Everything that is not locked, or only the lunch or the week of that day. */
  z.object({
    step: z.literal("propose"),
    month,
    scope: z.enum(["rest", "week", "lunch"]),
    date: Day.optional(),
    sliders: Sliders,
  }),
  z.object({ step: z.literal("swap"), ...place, otherId: z.string().min(1) }),
  z.object({ step: z.literal("lock"), ...place }),
  z.object({ step: z.literal("unlock"), ...place }),
  z.object({ step: z.literal("ban"), ...item }),
  z.object({ step: z.literal("unban"), ...item }),
  z.object({ step: z.literal("prefer"), ...item }),
  z.object({ step: z.literal("unprefer"), ...item }),
  z.object({ step: z.literal("undo"), month }),
  z.object({ step: z.literal("beside"), month }),
  z.object({ step: z.literal("exchange"), month }),
  z.object({ step: z.literal("drop"), month }),
  /** `stamp`: how the proposal stood on the page that the user saw. */
  z.object({ step: z.literal("take"), month, stamp: z.string().max(40).optional() }),
]);
export type ChangeProposalInput = z.infer<typeof ChangeProposalInput>;

/** The step a submitted form asks for; sliders are fields named `aim-…`. */
export function stepOfForm(form: FormData): unknown {
  const entries = [...form].filter((entry): entry is [string, string] => isText(entry[1]));
  const sliders = entries
    .filter(([name]) => name.startsWith(SLIDER))
    .map(([name, value]) => [name.slice(SLIDER.length), value]);
  return {
    ...Object.fromEntries(entries.filter(([name, value]) => value !== "" && !name.startsWith("$"))),
    sliders: Object.fromEntries(sliders) as unknown,
  };
}

const SLIDER = "aim-";

/** The name of an aim's slider in a form. */
export function sliderName(aim: Aim): string {
  return `${SLIDER}${aim}`;
}

function isText(value: FormDataEntryValue): value is string {
  return typeof value === "string";
}
