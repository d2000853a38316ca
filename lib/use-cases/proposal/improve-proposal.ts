import type { Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { planProblemFor } from "../plan-problem.ts";
import { runPlanner, type PlanProgress } from "../solver/run-planner.ts";
import { readDesk, stepped, withWishes, type Desk } from "./desk.ts";
import { openWeeks } from "./open-weeks.ts";

/** What a watching page is told. */
export type ImproveNews = {
  readonly points: number;
  readonly broken: number;
  /** Share by which no plan with these themes can be better; null: not proven yet. */
  readonly gap: number | null;
  /** Share by which no plan at all can be better; null: not proven. */
  readonly gapAll: number | null;
  /** The desk holds a better plan than the page that was last told so. */
  readonly isKept: boolean;
  readonly isDone: boolean;
};

const SECONDS_MAX = 30;
/** Below this gap nobody sees a difference any more. */
const GOOD_ENOUGH = 0.005;
/** Better plans reach the desk, and a watching page, at most this often. */
const KEEP_EVERY_MS = 3000;

/**
 * Improves the proposal of a month by the solver and tells how it goes. The best plan so far is kept on
 * the desk every few seconds, at the end, and when the signal comes: one step for undo, however often.
 * Ends when the user has changed the desk meanwhile, and leaves it as it is.
 */
export async function* improveProposal(
  context: Context,
  month: Day,
  signal: AbortSignal,
): AsyncGenerator<ImproveNews, void> {
  const mondays = await openWeeks(context, month);
  const stored = await readDesk(context.db, mondays, "open");
  if (!stored) return;
  const { desk, id } = stored;
  const problem = withWishes(await planProblemFor(context.db, mondays, context.today), desk.wishes);
  let kept = desk;
  let keptAt = performance.now();
  let next: Desk = { ...desk, proof: { ...desk.proof, isFresh: false } };
  const options = { seed: month, secondsMax: SECONDS_MAX, gap: GOOD_ENOUGH, signal };
  for await (const progress of runPlanner(problem, options)) {
    next = better(desk, next, progress);
    const isDue = next.plan !== kept.plan && performance.now() - keptAt > KEEP_EVERY_MS;
    if (isDue && !progress.isDone) {
      if (!(await keep(context.db, id, kept, next))) return;
      kept = next;
      keptAt = performance.now();
    }
    const { points, broken, gap, gapAll } = next.proof;
    yield { points, broken, gap, gapAll, isKept: isDue, isDone: progress.isDone };
  }
  await keep(context.db, id, kept, next);
}

/** The desk with the run's plan when it is better than the one there, or as good and better proven. */
function better(from: Desk, now: Desk, { plan, ...progress }: PlanProgress): Desk {
  const { points, broken, gap, gapAll } = progress;
  const isBetter =
    broken < now.proof.broken || (broken === now.proof.broken && points > now.proof.points + 1e-6);
  const isProven = gap !== null && broken === now.proof.broken && points >= now.proof.points - 1e-6;
  if (!isBetter && !isProven) return now;
  const proof = { points, broken, gap, gapAll, isFresh: false };
  if (!isBetter) return { ...now, proof };
  return stepped(from, { plan: copyOf(plan), wishes: from.wishes, proof });
}

/** False, and nothing is kept, when the desk is not what it was. */
async function keep(db: Db, id: string, known: Desk, next: Desk): Promise<boolean> {
  const { count } = await db.proposal.updateMany({
    where: { id, state: "open", planJson: JSON.stringify(known) },
    data: { planJson: JSON.stringify(next) },
  });
  return count > 0;
}

function copyOf(plan: {
  readonly weeks: readonly {
    readonly monday: Day;
    readonly themeId: string | null;
    readonly lunches: readonly { readonly date: Day; readonly itemIds: readonly string[] }[];
  }[];
}): Desk["plan"] {
  return {
    weeks: plan.weeks.map((week) => ({
      ...week,
      lunches: week.lunches.map((lunch) => ({ ...lunch, itemIds: [...lunch.itemIds] })),
    })),
  };
}
