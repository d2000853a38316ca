import type { Day } from "#lib/calendar/index.ts";
import { writeErrandWeek } from "#lib/db/index.ts";
import { standingOf } from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { planRunsInWorker } from "../solver/plan-runs.ts";
import { standingWeek, toldOf } from "./standing-week.ts";

/** Seconds that the solver may take when the user asks for a plan anew. */
const SOLVER_SECONDS = 5;

/**
 * Plans a week's runs from nothing, with more time than a page has: what was ticked or decided by hand
 * stays, everything else may move. What is ticked while it works is taken into account by the next view.
 */
export async function planAnew({ db, today }: Context, monday: Day): Promise<void> {
  const { question, records } = await standingWeek(db, today, monday);
  const plan = await planRunsInWorker(question.problem, SOLVER_SECONDS);
  const standing = standingOf(question.problem, plan);
  await writeErrandWeek(db, monday, { standing, told: toldOf(question, plan, records) });
}
