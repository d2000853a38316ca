import { daysBetween, type Day } from "#lib/calendar/index.ts";
import { indexProblem } from "./index-problem.ts";
import { freshThemePoints } from "./index-themes.ts";
import { itemAims } from "./item-aims.ts";
import { stateOf } from "./plan-state.ts";
import type { Plan, PlanItem, PlannedLunch, PlannedWeek, PlanProblem } from "./problem.ts";
import { AIMS, POINTS, type Aim } from "./weights.ts";

/** Points of each aim; together they are the plan's points. */
export type AimPoints = Readonly<Record<Aim, number>>;

export type Score = {
  readonly points: number;
  readonly aims: AimPoints;
  /** Rules it breaks, larger breaches counting more; 0: the plan stands. */
  readonly broken: number;
};

/** What a plan is worth, aim by aim, and whether it stands. Items unknown to the problem count nothing. */
export function scorePlan(problem: PlanProblem, plan: Plan): Score {
  const aims = planAims(problem, plan);
  const points = AIMS.reduce((sum, aim) => sum + aims[aim], 0);
  return { points, aims, broken: stateOf(indexProblem(problem), plan).broken };
}

function planAims(problem: PlanProblem, plan: Plan): AimPoints {
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const itemsOf = ({ itemIds }: PlannedLunch): PlanItem[] =>
    itemIds.map((id) => itemOf.get(id)).filter((item) => item !== undefined);
  const aims = Object.fromEntries(AIMS.map((aim) => [aim, 0])) as Record<Aim, number>;
  const add = (aim: Aim, points: number): void => void (aims[aim] += points);
  for (const week of plan.weeks) {
    add("theme", problem.weights.theme * themeBonus(problem, week));
    const theme = problem.themes.find(({ id }) => id === week.themeId);
    if (theme) add("fresh", freshThemePoints(theme, problem.weights.fresh));
    for (const lunch of week.lunches) {
      const items = itemsOf(lunch);
      for (const item of items) {
        for (const [aim, points] of Object.entries(itemAims(problem, item, lunch.date))) {
          add(aim as Aim, points);
        }
      }
      add("theme", problem.weights.theme * POINTS.theme * fitSum(items, week.themeId));
      const colours = new Set(items.flatMap((item) => item.colours)).size;
      add(
        "colours",
        problem.weights.colours * POINTS.colour * Math.min(POINTS.coloursMax, colours),
      );
    }
    const ofWeek = week.lunches.flatMap(itemsOf);
    const families = new Set(ofWeek.map(({ familyId }) => familyId)).size;
    add("fresh", problem.weights.fresh * POINTS.familyRepeat * (ofWeek.length - families));
    add("shops", problem.weights.shops * POINTS.shop * leastEffort(problem, ofWeek));
  }
  const all = plan.weeks.flatMap((week) => week.lunches.flatMap(itemsOf));
  const foods = all.map(({ foodId }) => foodId);
  const tricks = all.flatMap(({ trickIds }) => [...new Set(trickIds)]);
  add("fresh", problem.weights.fresh * POINTS.foodRepeat * (foods.length - new Set(foods).size));
  add("fresh", problem.weights.fresh * POINTS.trickRepeat * (tricks.length - new Set(tricks).size));
  add("waste", problem.weights.waste * POINTS.owed * urgencySettled(problem, plan));
  return aims;
}

function themeBonus(problem: PlanProblem, { themeId, monday }: PlannedWeek): number {
  const bonus = problem.themes.find(({ id }) => id === themeId)?.bonus ?? [];
  return bonus
    .filter((entry) => entry.monday === monday)
    .reduce((sum, { points }) => sum + points, 0);
}

function fitSum(items: readonly PlanItem[], themeId: string | null): number {
  const fits = items.flatMap((item) => item.fits.filter((fit) => fit.themeId === themeId));
  return Math.min(
    POINTS.themeItemsMax,
    fits.reduce((sum, { fit }) => sum + fit, 0),
  );
}

/** Effort of the easiest set of shops that sells all of the items: each item tried at each shop. */
function leastEffort({ shops }: PlanProblem, items: readonly PlanItem[]): number {
  const open = [...items.filter(({ shopIds }) => shopIds.length > 0)];
  const visit = (visited: ReadonlySet<string>, effort: number, best: number): number => {
    if (effort >= best) return best;
    const missing = open.find(({ shopIds }) => !shopIds.some((id) => visited.has(id)));
    if (!missing) return effort;
    return missing.shopIds.reduce((least, id) => {
      const more = shops.find((shop) => shop.id === id)?.effort ?? 0;
      return visit(new Set([...visited, id]), effort + more, least);
    }, best);
  };
  return visit(new Set(), 0, Infinity);
}

function urgencySettled(problem: PlanProblem, plan: Plan): number {
  const shown = plan.weeks
    .flatMap((week) => week.lunches)
    .flatMap(({ date, itemIds }) => itemIds.map((itemId) => ({ date, itemId })));
  const inTime = (date: Day, useBy: Day | null): boolean =>
    useBy === null || daysBetween(date, useBy) >= 0;
  return problem.owed
    .filter(({ itemIds, useBy }) =>
      shown.some(({ date, itemId }) => itemIds.includes(itemId) && inTime(date, useBy)),
    )
    .reduce((sum, { urgency }) => sum + urgency, 0);
}
