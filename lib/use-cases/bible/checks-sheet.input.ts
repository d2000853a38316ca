import { z } from "zod";
import {
  BAG_KINDS,
  BALANCE_SCHEMES,
  describeReadingProblem,
  perHourOf,
} from "#lib/safety/index.ts";
import { wholeField } from "./typed-fields.input.ts";

/** A number as typed, with a point or a comma. */
function decimalField(least: number, most: number) {
  const error = `Write a number from ${least} to ${most}.`;
  return z
    .string()
    .trim()
    .regex(/^-?\d+([.,]\d+)?$/u, { error })
    .transform((text) => Number(text.replace(",", ".")))
    .refine((value) => value >= least && value <= most, { error });
}

const READING_FIELDS = {
  waterMl: [50, 5000],
  startC: [-20, 100],
  hours: [0.1, 24],
  readC: [-20, 100],
  roomC: [-20, 50],
} as const;
const READING_KEYS = ["waterMl", "startC", "hours", "readC", "roomC"] as const;

/** Five fields that belong together: all empty means no reading was taken. */
const ReadingField = z
  .object({
    waterMl: z.string(),
    startC: z.string(),
    hours: z.string(),
    readC: z.string(),
    roomC: z.string(),
  })
  .transform((typed, context) => {
    if (READING_KEYS.every((key) => typed[key].trim() === "")) return null;
    const read = { waterMl: 0, startC: 0, hours: 0, readC: 0, roomC: 0 };
    for (const key of READING_KEYS) {
      const [least, most] = READING_FIELDS[key];
      const parsed = decimalField(least, most).safeParse(typed[key]);
      if (parsed.success) read[key] = parsed.data;
      else
        context.addIssue({
          code: "custom",
          path: [key],
          message: parsed.error.issues[0]?.message ?? "",
        });
    }
    if (context.issues.length > 0) return z.NEVER;
    const constant = perHourOf(read);
    if (constant.ok) return read;
    const message = describeReadingProblem(constant.problem);
    context.addIssue({ code: "custom", path: ["readC"], message });
    return z.NEVER;
  });

const Month = z.union([z.literal(""), decimalField(-40, 50)], {
  error: "Write a temperature from -40 to 50, or leave all twelve empty.",
});

/** How lunch is carried, the weather it meets, and by which scheme amounts are counted. */
export const ChecksInput = z.object({
  stamp: z.string().max(60),
  bag: z.enum(BAG_KINDS),
  packs: wholeField(0, 6),
  packGrams: wholeField(20, 1000),
  freezesDrink: z.boolean(),
  isPrechilled: z.boolean(),
  fridgeC: decimalField(0, 10),
  bagReading: ReadingField,
  jarMl: wholeField(100, 2000),
  isJarPreheated: z.boolean(),
  fillC: decimalField(50, 100),
  jarReading: ReadingField,
  waits: z.enum(["indoors", "outdoors"]),
  indoorC: decimalField(5, 40),
  lidMinutes: wholeField(0, 180),
  climate: z
    .array(Month)
    .length(12)
    .transform((months, context) => {
      const said = months.filter((month) => month !== "");
      if (said.length === 0) return null;
      if (said.length === 12) return said;
      const path = [months.findIndex((month) => month === "")];
      context.addIssue({ code: "custom", path, message: "Fill all twelve months, or none." });
      return z.NEVER;
    }),
  balanceScheme: z.enum(BALANCE_SCHEMES),
});
export type ChecksInput = z.infer<typeof ChecksInput>;
