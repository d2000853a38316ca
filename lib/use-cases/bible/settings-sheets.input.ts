import { z } from "zod";
import { ClockTime, Day, isTimeZone } from "#lib/calendar/index.ts";
import {
  linesField,
  nameField,
  OptionalDay,
  textField,
  TickedWeekdays,
  wholeField,
} from "./typed-fields.input.ts";

const Stamp = { stamp: z.string().max(60) };

/** The series and how it speaks. */
export const SeriesInput = z.object({
  ...Stamp,
  name: nameField("Give the series a name."),
  wordsPerMinute: wholeField(80, 260),
  signOn: textField(300),
  signOff: textField(300),
  housePhrases: linesField(60, 200),
  runningFeatures: linesField(60, 200),
  tone: z.enum(["warm", "plain", "playful"]),
  emoji: z.boolean(),
});
export type SeriesInput = z.infer<typeof SeriesInput>;

/** One span of days off; without a last day it is one day long. */
export const DayOffInput = z
  .object({
    from: Day,
    to: OptionalDay,
    label: z
      .string()
      .trim()
      .min(1, { error: "Say what it is, such as Winter break." })
      .max(80, { error: "Keep it under 80 letters." }),
  })
  .refine(({ from, to }) => to === "" || to >= from, {
    path: ["to"],
    error: "The last day lies before the first.",
  });

/** The kitchen's zone as typed; empty: that of the machine. */
const TimeZone = z
  .string()
  .trim()
  .max(60)
  .refine((name) => name === "" || isTimeZone(name), {
    error: "This is not a time zone. Pick one from the list, such as Europe/Oslo.",
  })
  .transform((name) => (name === "" ? null : name));

/** School days, days off and the hours of a school day. */
export const DaysInput = z.object({
  ...Stamp,
  schoolDays: TickedWeekdays.refine((days) => days.length > 0, {
    error: "Tick at least one day with a packed lunch.",
  }),
  departure: ClockTime,
  lunchAt: ClockTime,
  verdictAt: ClockTime,
  timeZone: TimeZone,
  daysOff: z.array(DayOffInput).max(300, { error: "300 spans at most." }),
});
export type DaysInput = z.infer<typeof DaysInput>;

/** Money typed as "45", "45.50" or "45,5"; empty: none. In cents. */
const Money = z
  .string()
  .trim()
  .transform((text, context) => {
    if (text === "") return null;
    if (/^\d{1,6}([.,]\d{1,2})?$/.test(text))
      return Math.round(Number(text.replace(",", ".")) * 100);
    context.addIssue({ code: "custom", message: "Write an amount such as 45 or 45.50." });
    return z.NEVER;
  });

/** Time, money, hands and appliances there are, and how fast something may come back. */
export const LimitsInput = z.object({
  ...Stamp,
  morningFrom: ClockTime,
  eveningFrom: ClockTime,
  bedtime: ClockTime,
  morningMinutes: wholeField(1, 240),
  cooks: wholeField(1, 4),
  appliances: z.record(z.string().max(40), wholeField(0, 6)),
  currency: z
    .string()
    .trim()
    .min(1, { error: "Say the currency." })
    .max(8, { error: "8 letters at most." }),
  weekBudget: Money,
  newFoodsPerLunchMax: wholeField(0, 5),
  newFoodsPerWeekMax: wholeField(0, 10),
  wantsDiscoveries: z.boolean(),
  themeRestDays: wholeField(0, 730),
  productRestDays: wholeField(0, 365),
  foodRestDays: wholeField(0, 365),
  familyRestDays: wholeField(0, 365),
  trickRestDays: wholeField(0, 365),
});
export type LimitsInput = z.infer<typeof LimitsInput>;

/** What may leave the house, and in what lengths. */
export const PublicInput = z.object({
  ...Stamp,
  lawNote: textField(4000),
  privateWords: linesField(200, 120),
  titleMax: wholeField(10, 500),
  descriptionMax: wholeField(100, 20_000),
  firstLinesMax: wholeField(20, 1000),
});
export type PublicInput = z.infer<typeof PublicInput>;
