import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { inTransaction, readFoods, type Db } from "#lib/db/index.ts";
import { scorePlan, weekShops, type Plan, type PlanProblem } from "#lib/planner/index.ts";
import type { Context } from "../context.ts";
import { pencilIn } from "../pencil-week.ts";
import { planProblemFor } from "../plan-problem.ts";
import { readDesk, stampOfDesk, withWishes } from "./desk.ts";
import { openWeeks } from "./open-weeks.ts";

export type TakeProblem = {
  readonly kind: "nothing-open" | "no-proposal" | "rules-broken" | "changed-elsewhere";
};

/** Thrown inside the transaction, so that the weeks already written go back too. */
class WeekChanged extends Error {}

/**
 * Pencils the proposal of a month into its weeks, all of them or none, with the items' tricks and the
 * shops of each week's tour. `stamp` says how the proposal stood on the page: when it or one of its weeks
 * was changed since, nothing is written. Returns how many weeks were.
 */
export async function takePlan(
  context: Context,
  month: Day,
  stamp: string | undefined,
): Promise<Result<{ readonly taken: number }, TakeProblem>> {
  try {
    return await inTransaction(context.db, async (tx) => {
      const mondays = await openWeeks({ db: tx, today: context.today }, month);
      const stored = await readDesk(tx, mondays, "open");
      if (stamp !== undefined && (!stored || stampOfDesk(stored.desk) !== stamp)) {
        return refuse({ kind: "changed-elsewhere" });
      }
      if (mondays.length === 0) return refuse({ kind: "nothing-open" });
      if (!stored) return refuse({ kind: "no-proposal" });
      const { plan, wishes } = stored.desk;
      // The records may have changed since: what is taken is judged by what holds now.
      const problem = await planProblemFor(tx, mondays, context.today);
      if (scorePlan(withWishes(problem, wishes), plan).broken > 0) {
        return refuse({ kind: "rules-broken" });
      }
      await writePlan(tx, problem, plan);
      await tx.proposal.update({ where: { id: stored.id }, data: { state: "taken" } });
      return ok({ taken: plan.weeks.length });
    });
  } catch (error) {
    if (error instanceof WeekChanged) return refuse({ kind: "changed-elsewhere" });
    throw error;
  }
}

async function writePlan(tx: Db, problem: PlanProblem, plan: Plan): Promise<void> {
  const servings = new Map(
    (await readFoods(tx)).map(({ id, servingGrams }) => [String(id), servingGrams]),
  );
  const items = new Map(problem.items.map((item) => [item.id, item]));
  for (const week of plan.weeks) {
    const input = { monday: week.monday, themeId: week.themeId ?? "", title: "" };
    const pencilled = await pencilIn(tx, input);
    if (!pencilled.ok) throw new WeekChanged(pencilled.problem.kind);
    const rows = await tx.lunch.findMany({ where: { episodeId: pencilled.value.id } });
    const lunchOn = new Map(rows.map(({ date, id }) => [date, id]));
    const days = week.lunches.map(({ date }) => date);
    // A day off was added or taken away since.
    if (days.join() !== [...lunchOn.keys()].sort().join()) throw new WeekChanged("days");
    const tour = weekShops(problem, week);
    const planned = week.lunches.flatMap(({ date, itemIds }) =>
      itemIds.map((itemId, position) => {
        const item = items.get(itemId);
        const lunchId = lunchOn.get(date);
        if (!item || lunchId === undefined) throw new WeekChanged(itemId);
        return { id: `${lunchId}-${position}`, lunchId, position, item };
      }),
    );
    await tx.lunchItem.createMany({
      data: planned.map(({ id, lunchId, position, item: { foodId, part, shopIds } }) => ({
        ...{ id, lunchId, foodId, part, position, unit: "g" },
        amount: Math.round(servings.get(foodId) ?? 0),
        shopId: tour.find((shopId) => shopIds.includes(shopId)) ?? null,
      })),
    });
    await tx.itemTrick.createMany({
      data: planned.flatMap(({ id, item }) =>
        item.trickIds.map((trickId) => ({ itemId: id, trickId })),
      ),
    });
  }
}
