import { z } from "zod";

/** What a file of earlier weeks may say, a column each. Date and item must be there. */
export const PAST_FIELDS = [
  "date",
  "theme",
  "item",
  "amount",
  "unit",
  "part",
  "trick",
  "shop",
  "child",
  "eaten",
  "face",
  "quote",
] as const;
export type PastField = (typeof PAST_FIELDS)[number];

export const DELIMITERS = [",", ";", "\t", "|"] as const;
/** How dates are written: year, day or month first. */
export const DATE_STYLES = ["ymd", "dmy", "mdy"] as const;

/** How a file is read: what stands between its cells, its dates, and which column says what. */
export const PastReading = z.object({
  delimiter: z.enum(DELIMITERS),
  dates: z.enum(DATE_STYLES),
  hasHeader: z.boolean(),
  /** Column number from 0; a field that the file does not have is left out. */
  columns: z.partialRecord(z.enum(PAST_FIELDS), z.number().int().min(0).max(200)),
});
export type PastReading = z.infer<typeof PastReading>;

/** The longest file taken, in characters. */
const PAST_LENGTH_MAX = 20_000_000;

/** A file of earlier weeks; without a reading Noonbook guesses one. */
export const PastInput = z.object({
  text: z
    .string()
    .min(1, { error: "Choose a file, or paste its text." })
    .max(PAST_LENGTH_MAX, { error: "That file is too long. Bring it in parts." }),
  reading: PastReading.nullable(),
  /** What the user said a phrase is: the id of a food, NEW_FOOD or LEAVE_OUT. */
  choices: z.record(z.string().max(500), z.string().max(120)),
});
export type PastInput = z.infer<typeof PastInput>;

/** A phrase that is a food of its own, to be added to the Larder. */
export const NEW_FOOD = "+";
/** A phrase whose lines are left out. */
export const LEAVE_OUT = "-";

/** A whole series to put in the place of this one, once the user said that it may. */
export const WholeInput = z.object({
  text: z.string().min(1, { error: "Choose a file." }).max(200_000_000),
  mayReplace: z.literal(true, { error: "Say that it may take the place of what stands here." }),
});
