import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";

/** A name that must be there; `empty` is said when it is not. */
export function nameField(empty: string) {
  return z
    .string()
    .trim()
    .min(1, { error: empty })
    .max(80, { error: "Keep the name under 80 letters." });
}

/** A text that may be empty, at most so many letters. */
export function textField(most: number) {
  return z
    .string()
    .trim()
    .max(most, { error: `Keep it under ${most.toLocaleString("en")} letters.` });
}

/** A whole number between two, both included. */
export function wholeField(least: number, most: number) {
  const error = `Write a whole number from ${least} to ${most}.`;
  return z.number({ error }).int({ error }).min(least, { error }).max(most, { error });
}

/** One entry a line; empty lines and repeated entries are left out. */
export function linesField(entries: number, letters: number) {
  return z.string().transform((text, context) => {
    const lines = [...new Set(text.split(/\r?\n/).map((line) => line.trim()))].filter(Boolean);
    const long = lines.findIndex((line) => line.length > letters);
    if (long >= 0) {
      const message = `Line ${long + 1} is longer than ${letters} letters.`;
      context.addIssue({ code: "custom", message });
    }
    if (lines.length > entries) {
      context.addIssue({ code: "custom", message: `${entries} lines at most.` });
    }
    return lines;
  });
}

/** A day that need not be said. */
export const OptionalDay = z.union([z.literal(""), Day], {
  error: "This is not a date. Use year-month-day, like 2026-03-11.",
});

/** Ticked ISO weekdays as a form holds them, "1" Monday … "7" Sunday, to sorted numbers. */
export const TickedWeekdays = z
  .array(z.enum(["1", "2", "3", "4", "5", "6", "7"]))
  .transform((days) => [...new Set(days.map(Number))].sort((one, other) => one - other));

/** The row a form edits (empty: a new one) and the mark of how it stood when the form was opened. */
export const RowMark = { id: z.string().max(60), stamp: z.string().max(60) };
