import type { Day } from "#lib/calendar/index.ts";
import type { Context } from "../context.ts";
import { planProblemFor } from "../plan-problem.ts";
import { conflictInWorker } from "../solver/conflict-in-worker.ts";
import { describeConflict } from "./describe-why-not.ts";
import { NO_WISHES, readDesk, withWishes } from "./desk.ts";
import { openWeeks } from "./open-weeks.ts";

/** Which rules stand in the way of a month, with fixes; undefined when a plan exists. Takes seconds. */
export async function findObstacles(
  context: Context,
  month: Day,
): Promise<ReturnType<typeof describeConflict> | undefined> {
  const mondays = await openWeeks(context, month);
  if (mondays.length === 0) return undefined;
  const stored = await readDesk(context.db, mondays, "open");
  const problem = await planProblemFor(context.db, mondays, context.today);
  const conflict = await conflictInWorker(withWishes(problem, stored?.desk.wishes ?? NO_WISHES));
  return conflict && describeConflict(conflict);
}
