import type { Day } from "#lib/calendar/index.ts";
import type { PlanItem, PlanProblem } from "./problem.ts";
import { POINTS, type Aim } from "./weights.ts";

/** No child is as sure as this: keeps the odds of a refusal from jumping. */
const SD_LEAST = 0.03;

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
    liked: weights.liked * POINTS.liked * liking(item),
    fresh: weights.fresh * POINTS.echo * (item.echo - POINTS.usualEcho),
    discoveries:
      weights.discoveries * ((item.isNew ? POINTS.newFood : 0) + POINTS.unknown * meanSd(item)),
    waste: weights.waste * POINTS.wastePerCent * item.wasteCents,
    money: weights.money * POINTS.moneyPerCent * item.costCents,
    work: weights.work * POINTS.workPerMinute * item.minutes,
  };
}

/** Mean share that the children are expected to eat, 0–1. No children: 0. */
export function expectedShare({ acceptance }: PlanItem): number {
  return acceptance.reduce((sum, { mean }) => sum + mean, 0) / Math.max(1, acceptance.length);
}

/**
 * From −1, all children are sure to leave it, to 1, all are sure to eat it up: the mean over them, drawn
 * toward the worst-off child. No children: 0.
 */
function liking(item: PlanItem): number {
  const likings = item.acceptance.map(likingOf);
  if (likings.length === 0) return 0;
  const mean = likings.reduce((sum, liking) => sum + liking, 0) / likings.length;
  return POINTS.worstOffShare * Math.min(...likings) + (1 - POINTS.worstOffShare) * mean;
}

/**
 * For one child, by the share it is expected to eat and by the odds that half or more comes back, each −1
 * to 1. The share is taken as normal, its distribution as the logistic one near it (S. R. Bowling et al.
 * 2009, from memory).
 */
function likingOf({ mean, sd }: PlanItem["acceptance"][number]): number {
  const share = mean - POINTS.caution * sd;
  const refused = 1 / (1 + Math.exp((1.702 * (share - 0.5)) / Math.max(SD_LEAST, sd)));
  return (1 - POINTS.refusalShare) * (2 * share - 1) + POINTS.refusalShare * (1 - 2 * refused);
}

function meanSd(item: PlanItem): number {
  if (item.acceptance.length === 0) return 0;
  return item.acceptance.reduce((sum, { sd }) => sum + sd, 0) / item.acceptance.length;
}
