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
    liked: weights.liked * POINTS.liked * likedShare(item),
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
 * What the children are worth pleasing with it, at most 1: the mean over them, drawn toward the worst-off
 * child. No children: 0.
 */
function likedShare(item: PlanItem): number {
  const shares = item.acceptance.map(likedBy);
  if (shares.length === 0) return 0;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return POINTS.worstOffShare * Math.min(...shares) + (1 - POINTS.worstOffShare) * mean;
}

/**
 * The share a child is expected to eat, less the odds that half or more comes back: the share is taken as
 * normal, its distribution as the logistic one near it (S. R. Bowling et al. 2009, from memory).
 */
function likedBy({ mean, sd }: PlanItem["acceptance"][number]): number {
  const share = mean - POINTS.caution * sd;
  const odds = 1 / (1 + Math.exp((1.702 * (share - 0.5)) / Math.max(SD_LEAST, sd)));
  return share - POINTS.refusal * odds;
}

function meanSd(item: PlanItem): number {
  if (item.acceptance.length === 0) return 0;
  return item.acceptance.reduce((sum, { sd }) => sum + sd, 0) / item.acceptance.length;
}
