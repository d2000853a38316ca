import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { readRunningTime } from "#lib/drafts/index.ts";

const RunningTime = z
  .string()
  .max(10)
  .transform((text, context) => {
    const seconds = readRunningTime(text);
    if (seconds === undefined) {
      context.addIssue({ code: "custom", message: "Write a time like 1:15." });
      return z.NEVER;
    }
    return seconds;
  });

const OptionalTime = z.union([z.literal("").transform(() => null), RunningTime]);

/** Times marked in the finished episode: how long it runs, its chapters, and each child’s share. */
export const MarkTimesInput = z.object({
  monday: Day,
  revision: z.number().int().min(0),
  runtime: OptionalTime,
  chapters: z
    .array(
      z.object({
        time: RunningTime,
        title: z
          .string()
          .trim()
          .min(1, { error: "Give the chapter a title." })
          .max(100, { error: "Keep the title under 100 letters." }),
      }),
    )
    .max(60, { error: "60 chapters at most." }),
  screen: z.array(z.object({ childId: z.string().min(1).max(60), time: OptionalTime })).max(20),
});
export type MarkTimesInput = z.infer<typeof MarkTimesInput>;
