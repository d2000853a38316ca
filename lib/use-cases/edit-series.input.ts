import { z } from "zod";
import { ClockTime } from "#lib/calendar/index.ts";

/** What the first sheet of the series bible holds. */
export const EditSeriesInput = z.object({
  name: z
    .string()
    .trim()
    .min(1, { error: "Give the series a name." })
    .max(80, { error: "Keep the name under 80 letters." }),
  departure: ClockTime,
  wordsPerMinute: z
    .number({ error: "Write a number of words." })
    .int({ error: "Write a whole number of words." })
    .min(80, { error: "80 words a minute at least." })
    .max(260, { error: "260 words a minute at most." }),
  signOn: z.string().trim().max(300, { error: "Keep it under 300 letters." }),
  signOff: z.string().trim().max(300, { error: "Keep it under 300 letters." }),
});
export type EditSeriesInput = z.infer<typeof EditSeriesInput>;
