import type { Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { planProblemFor } from "../plan-problem.ts";
import { runPlanner } from "../solver/run-planner.ts";
import { readDesk, stepped, withWishes, type Desk } from "./desk.ts";
import { openWeeks } from "./open-weeks.ts";

/** What a watching page is told. */
export type ImproveNews = {
  readonly points: number;
  readonly broken: number;
  /** Share by which no plan with these themes can be better; null: not proven yet. */
  readonly gap: number | null;
  readonly isDone: boolean;
};

const SECONDS_MAX = 30;
/** Below this gap nobody sees a difference any more. */
const GOOD_ENOUGH = 0.005;

/**
 * Improves the proposal of a month by the solver and tells how it goes. The best plan is kept on the
 * desk at the end, or when the signal comes; nothing is kept when the user has changed the desk meanwhile.
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
  let best = desk.proof;
  let plan = desk.plan;
  const options = { seed: month, secondsMax: SECONDS_MAX, gap: GOOD_ENOUGH, signal };
  for await (const progress of runPlanner(problem, options)) {
    const { points, broken, gap, isDone } = progress;
    const isBetter =
      broken < best.broken || (broken === best.broken && points > best.points + 1e-6);
    if (isBetter || (gap !== null && points >= best.points - 1e-6)) {
      best = { points, broken, gap };
      plan = copyOf(progress.plan);
    }
    yield { ...best, isDone };
  }
  await keep(context.db, id, desk, { plan, wishes: desk.wishes, proof: best });
}

async function keep(db: Db, id: string, known: Desk, next: Omit<Desk, "before">): Promise<void> {
  await db.proposal.updateMany({
    where: { id, state: "open", planJson: JSON.stringify(known) },
    data: { planJson: JSON.stringify(stepped(known, next)) },
  });
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
