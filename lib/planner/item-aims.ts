import type { Day } from "#lib/calendar/index.ts";
import type { PlanItem, PlanProblem } from "./problem.ts";
import { POINTS, type Aim } from "./weights.ts";

/**
 * Points of one item on a day, aim by aim, as far as they depend on nothing else in the plan (theme,
 * shops, colours, owed food and family repeats are added by the state and the model).
 */
export function itemAims(
  problem: PlanProblem,
  item: PlanItem,
  date: Day,
): Partial<Record<Aim, number>> {
  const { weights } = problem;
  const wishes = problem.wishes
    .filter((wish) => (wish.date === null || wish.date === date) && wish.itemIds.includes(item.id))
    .reduce((sum, wish) => sum + wish.points, 0);
  return { ...steadyAims(problem, item), wishes: weights.wishes * wishes };
}

/** The part of `itemAims` that is the same on every day. */
export function steadyAims(problem: PlanProblem, item: PlanItem): Partial<Record<Aim, number>> {
  const { weights } = problem;
  return {
    liked: weights.liked * POINTS.liked * likedShare(item),
    fresh: weights.fresh * POINTS.fresh * freshShare(item),
    discoveries:
      weights.discoveries * ((item.isNew ? POINTS.newFood : 0) + POINTS.unknown * meanSd(item)),
    waste: weights.waste * POINTS.wastePerCent * item.wasteCents,
    money: weights.money * POINTS.moneyPerCent * item.costCents,
    work: weights.work * POINTS.workPerMinute * item.minutes,
  };
}

/** Mean share eaten, drawn toward the worst-off child, 0–1. No children: 0. */
export function likedShare(item: PlanItem): number {
  const means = item.acceptance.map(({ mean }) => mean);
  if (means.length === 0) return 0;
  const mean = means.reduce((sum, value) => sum + value, 0) / means.length;
  return POINTS.worstOffShare * Math.min(...means) + (1 - POINTS.worstOffShare) * mean;
}

function freshShare(item: PlanItem): number {
  return item.daysUnseen === null
    ? 1
    : Math.min(1, Math.max(0, item.daysUnseen) / POINTS.freshDays);
}

function meanSd(item: PlanItem): number {
  if (item.acceptance.length === 0) return 0;
  return item.acceptance.reduce((sum, { sd }) => sum + sd, 0) / item.acceptance.length;
}
