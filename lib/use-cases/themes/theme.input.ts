import { z } from "zod";
import { Colour } from "#lib/catalog/index.ts";
import { EventWeeks, FEAST_OFFSETS, type MovingFeast } from "#lib/calendar/index.ts";
import {
  linesField,
  nameField,
  RowMark,
  textField,
  wholeField,
} from "../bible/typed-fields.input.ts";

/** The moving feasts a season may stand around, in the order of the year. */
export const FEASTS = Object.keys(FEAST_OFFSETS) as [MovingFeast, ...MovingFeast[]];

/** A theme of the pool as its form holds it. */
export const ThemeInput = z
  .object({
    ...RowMark,
    name: nameField("Give the theme a name."),
    motifs: linesField(30, 40),
    palette: z.array(Colour),
    season: z.enum(["always", "months", "date", "feast", "event"]),
    months: z.array(z.string().regex(/^([1-9]|1[0-2])$/)),
    month: wholeField(1, 12),
    date: wholeField(1, 31),
    feast: z.enum(FEASTS),
    /** The name of a day off of the series bible. */
    event: textField(120),
    weeks: EventWeeks,
    before: wholeField(0, 120),
    after: wholeField(0, 120),
    /** Empty: the series' own. */
    restDays: z
      .string()
      .trim()
      .regex(/^\d{0,3}$/, { error: "Write a number of days, or leave it empty." }),
    note: textField(1000),
  })
  .superRefine((theme, context) => {
    if (theme.season === "months" && theme.months.length === 0) {
      const message = "Tick at least one month.";
      context.addIssue({ code: "custom", path: ["months"], message });
    }
    if (theme.season === "event" && theme.event === "") {
      const message = "Choose the days off it goes by.";
      context.addIssue({ code: "custom", path: ["event"], message });
    }
    const days = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][theme.month - 1] ?? 31;
    if (theme.season === "date" && theme.date > days) {
      const message = "That month has no such day.";
      context.addIssue({ code: "custom", path: ["date"], message });
    }
  });
export type ThemeInput = z.infer<typeof ThemeInput>;

/** Which themes of the pool are shown: by words, and two ticks; what makes no sense asks for nothing. */
export const FindThemesInput = z.object({
  q: z.string().trim().max(80).catch(""),
  season: z.literal("next-month").optional().catch(undefined),
  used: z.literal("never").optional().catch(undefined),
});
export type FindThemesInput = z.infer<typeof FindThemesInput>;

/** An idea that a viewer sent. */
export const IdeaInput = z.object({
  text: z
    .string()
    .trim()
    .min(1, { error: "Write the idea down." })
    .max(500, { error: "Keep it under 500 letters." }),
});
export type IdeaInput = z.infer<typeof IdeaInput>;

/** What becomes of an idea; a name is needed unless it is passed over or put back. */
export const SettleIdeaInput = z
  .object({
    id: z.string().min(1).max(60),
    into: z.enum(["theme", "food", "passed", "inbox"]),
    name: z.string().trim().max(80, { error: "Keep the name under 80 letters." }).default(""),
  })
  .refine(({ into, name }) => !["theme", "food"].includes(into) || name !== "", {
    path: ["name"],
    error: "Give it a name.",
  });
export type SettleIdeaInput = z.infer<typeof SettleIdeaInput>;
