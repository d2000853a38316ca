import { z } from "zod";
import { Day, mondayOf } from "#lib/calendar/index.ts";

/** A week to pencil in: its Monday, and a theme or a title of the user's own. */
export const PencilWeekInput = z.object({
  monday: Day.refine((value) => mondayOf(value) === value, {
    error: "A theme week begins on a Monday.",
  }),
  themeId: z.string().max(120).default(""),
  title: z.string().trim().max(120, { error: "Keep the title under 120 letters." }).default(""),
});
export type PencilWeekInput = z.infer<typeof PencilWeekInput>;
