import { ok, refuse, type Result } from "#lib/base/index.ts";
import { mondayOf, day } from "#lib/calendar/index.ts";
import { inTransaction, readEpisode, tickStep, untickStep } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { readSteps } from "./kitchen-day.ts";
import type { TickStepInput } from "./tick-step.input.ts";

export type TickProblem = { readonly kind: "lunch-gone" | "step-gone" };

/**
 * Ticks a step of a lunch off or takes the tick back; the minutes it took teach the next plan. Doing it
 * twice changes nothing but the minutes.
 */
export async function tickPrepStep(
  { db, now }: Context,
  { lunchId, stepKey, isDone, minutes }: TickStepInput,
): Promise<Result<undefined, TickProblem>> {
  return inTransaction(db, async (tx) => {
    const row = await tx.lunch.findUnique({ where: { id: lunchId }, select: { date: true } });
    const date = row && day(row.date);
    const episode = date ? await readEpisode(tx, mondayOf(date)) : undefined;
    const lunch = episode?.lunches.find(({ id }) => id === lunchId);
    if (!lunch) return refuse({ kind: "lunch-gone" });
    if (!isDone) {
      await untickStep(tx, lunchId, stepKey);
      return ok(undefined);
    }
    const step = (await readSteps(tx, lunch)).find(({ id }) => id === stepKey);
    if (!step) return refuse({ kind: "step-gone" });
    const { foodId, timingName } = step;
    await tickStep(tx, { lunchId, stepKey, on: lunch.date, foodId, timingName }, now, minutes);
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeTickProblem({ kind }: TickProblem): string {
  switch (kind) {
    case "lunch-gone":
      return "This lunch was removed meanwhile.";
    case "step-gone":
      return "The lunch was changed meanwhile and this step is no longer in it. Load the page again.";
  }
}
