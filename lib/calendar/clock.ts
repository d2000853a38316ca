import { z } from "zod";

/** A time of day on a 24-hour clock, `HH:MM`, in the family's own zone. */
export const ClockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, {
    error: "This is not a time. Use hours:minutes, like 07:50.",
  })
  .brand<"ClockTime">();
export type ClockTime = z.infer<typeof ClockTime>;

/** Minutes since midnight. */
export function minutesOfDay(time: ClockTime): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
}

/** The clock time of a number of minutes since midnight; wraps round the day. */
export function clockTime(minutes: number): ClockTime {
  const wrapped = ((Math.round(minutes) % 1440) + 1440) % 1440;
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${two(Math.floor(wrapped / 60))}:${two(wrapped % 60)}` as ClockTime;
}
