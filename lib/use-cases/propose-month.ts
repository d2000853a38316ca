import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { Day, mondayOf, weeksOfMonth } from "#lib/calendar/index.ts";
import { inTransaction, readFoods } from "#lib/db/index.ts";
import { proposePlan } from "#lib/planner/index.ts";
import type { Context } from "./context.ts";
import { pencilWeek, shootDays } from "./pencil-week.ts";
import { planProblemFor } from "./plan-problem.ts";

export const ProposeMonthInput = z.object({ month: Day });
export type ProposeMonthInput = z.infer<typeof ProposeMonthInput>;
export type ProposeProblem = { readonly kind: "nothing-empty" } | { readonly kind: "no-plan" };

const STEPS = 20_000;

/**
 * Pencils themes and lunches into the month's empty weeks from today on: in season, at rest, within
 * what the children and the school rule out, and what the verdicts say each child eats. Nothing is
 * written when a rule would have to be broken.
 */
export async function proposeMonth(
  context: Context,
  { month }: ProposeMonthInput,
): Promise<Result<{ readonly weeks: number }, ProposeProblem>> {
  const mondays = await emptyWeeks(context, month);
  if (mondays.length === 0) return refuse({ kind: "nothing-empty" });
  const problem = await planProblemFor(context.db, mondays, context.today);
  const { plan, broken } = proposePlan(problem, { seed: month, steps: STEPS });
  if (broken > 0) return refuse({ kind: "no-plan" });
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const foods = new Map((await readFoods(context.db)).map((food) => [String(food.id), food]));
  for (const week of plan.weeks) {
    const input = { monday: week.monday, themeId: week.themeId ?? "", title: "" };
    const pencilled = await pencilWeek(context, input);
    if (!pencilled.ok) continue;
    await inTransaction(context.db, async (tx) => {
      for (const lunch of week.lunches) {
        const row = await tx.lunch.findUniqueOrThrow({ where: { date: lunch.date } });
        const data = lunch.itemIds.flatMap((id, position) => {
          const item = items.get(id);
          const amount = Math.round(foods.get(item?.foodId ?? "")?.servingGrams ?? 0);
          return item
            ? [
                {
                  lunchId: row.id,
                  foodId: item.foodId,
                  part: item.part,
                  position,
                  amount,
                  unit: "g",
                },
              ]
            : [];
        });
        await tx.lunchItem.createMany({ data });
      }
    });
  }
  return ok({ weeks: plan.weeks.length });
}

/** Words for a refusal. */
export function describeProposeProblem({ kind }: ProposeProblem): string {
  switch (kind) {
    case "nothing-empty":
      return "Every week of this month that is still to come has its episode.";
    case "no-plan":
      return "No month was met that keeps every rest and rule. Pencil a week by hand, or shorten a rest.";
  }
}

async function emptyWeeks({ db, today }: Context, month: Day): Promise<Day[]> {
  const mondays = weeksOfMonth(month).filter((monday) => monday >= mondayOf(today));
  const taken = await db.episode.findMany({ where: { weekOf: { in: mondays } } });
  const empty = mondays.filter((monday) => !taken.some((one) => one.weekOf === monday));
  const days = await Promise.all(empty.map((monday) => shootDays(db, monday)));
  return empty.filter((_, index) => (days[index]?.length ?? 0) > 0);
}
