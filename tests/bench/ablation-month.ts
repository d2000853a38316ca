import { groupBy } from "#lib/base/index.ts";
import { mondayOf, weeksLater, type Day } from "#lib/calendar/index.ts";
import { readFoods, readTricks, type Db } from "#lib/db/index.ts";
import {
  AIM_WORDS,
  AIMS,
  proposePlan,
  scorePlan,
  type Plan,
  type PlanItem,
  type PlanProblem,
} from "#lib/planner/index.ts";
import { closestWeeks, type ShownWeek } from "#lib/repeats/index.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { readShownWeeks } from "#lib/use-cases/shown-weeks.ts";
import { logistic, tasteOf, trickUtility } from "#seed/demo/taste.ts";
import { brokenRules } from "#tests/support/check-plan.ts";
import { onDemo, solvedPlan } from "./on-demo.ts";

export const WAYS = ["solver", "plain filler", "longest not seen"] as const;
export type Way = (typeof WAYS)[number];

/** What a plan comes to, by name: points of the aims, and what is true of it. */
export type PlanFigures = ReadonlyMap<string, { readonly value: number; readonly unit: string }>;

export const ECHO = "echo with the closest earlier week";
export const SPOILED = "opened packs likely to spoil, a lunch";
export const REFUSED = "refused of what is packed";

/** The first four open weeks of the demo as somebody meets it on a day, planned each way. */
export function ablateMonth(today: Day): Promise<ReadonlyMap<Way, PlanFigures>> {
  return onDemo(today, (db) => compare(db, today));
}

async function compare(db: Db, today: Day): Promise<ReadonlyMap<Way, PlanFigures>> {
  // The demo has four weeks pencilled from this one on.
  const mondays = [4, 5, 6, 7].map((week) => weeksLater(mondayOf(today), week));
  const [first] = mondays as [Day];
  const problem = await planProblemFor(db, mondays, today);
  const history = await readShownWeeks(db, weeksLater(first, -60), weeksLater(first, -1));
  const themes = await db.theme.findMany({ select: { id: true, motifsJson: true } });
  const motifs = new Map(
    themes.map(({ id, motifsJson }) => [id, JSON.parse(motifsJson) as string[]]),
  );
  const truth = await truthOf(db, problem, today);
  const plans: ReadonlyMap<Way, Plan> = new Map([
    ["solver", await solvedPlan(problem, { seed: "a", roundsMax: 2 })],
    ["plain filler", proposePlan(problem, { seed: "a", steps: 0 }).plan],
    [
      "longest not seen",
      proposePlan(problem, { seed: "a", steps: 0, taste: "longest-unseen" }).plan,
    ],
  ]);
  return new Map(
    [...plans].map(([way, plan]) => {
      const { aims } = scorePlan(problem, plan);
      const figures: [string, number, string][] = [
        ...AIMS.map((aim): [string, number, string] => [AIM_WORDS[aim], aims[aim], "points"]),
        ["broken rules", brokenRules(problem, plan).length, ""],
        [ECHO, 100 * echoOf(problem, plan, history, motifs), "%"],
        ...truth(plan),
      ];
      return [way, new Map(figures.map(([name, value, unit]) => [name, { value, unit }]))];
    }),
  );
}

/**
 * What comes back under the taste model that the demo was drawn from: foods as often tasted before as the
 * records say, in their tricks. Refused: less than half of it is expected to be eaten. Thrown away: what
 * comes back, and what is likely to spoil of opened packs, in money.
 */
async function truthOf(
  db: Db,
  problem: PlanProblem,
  today: Day,
): Promise<(plan: Plan) => [string, number, string][]> {
  const taste = tasteOf(await readFoods(db), "tin harbour", weeksLater(mondayOf(today), -52));
  const kinds = new Map<string, string>((await readTricks(db)).map(({ id, kind }) => [id, kind]));
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const bites = await db.reaction.findMany({
    where: { eaten: { gt: 0 } },
    select: { childId: true, item: { select: { foodId: true } } },
  });
  const tasted = groupBy(bites, ({ childId, item }) => `${childId} ${item.foodId}`);
  const shareOf = (childId: string, item: PlanItem, on: Day): number => {
    const tastings = tasted.get(`${childId} ${item.foodId}`)?.length ?? 0;
    const extra = item.trickIds.reduce((sum, id) => sum + trickUtility(kinds.get(id) ?? ""), 0);
    return logistic(taste.utility(childId, item.foodId, on, tastings) + extra);
  };
  return (plan) => {
    const lunches = plan.weeks.flatMap((week) => week.lunches);
    const packed = lunches.flatMap(({ date, itemIds }) =>
      itemIds.flatMap((id) => {
        const item = itemOf.get(id);
        if (!item) return [];
        return { item, shares: problem.children.map((child) => shareOf(child.id, item, date)) };
      }),
    );
    const shares = packed.flatMap((one) => one.shares);
    const spoiled = sumOf(packed.map(({ item }) => item.wasteCents));
    const back = packed.map(({ item, shares: own }) => item.costCents * (1 - meanOf(own)));
    return [
      ["truly eaten, mean of both children", 100 * meanOf(shares), "%"],
      [REFUSED, 100 * meanOf(shares.map((share) => (share < 0.5 ? 1 : 0))), "%"],
      [SPOILED, spoiled / lunches.length, "cents"],
      ["thrown away in all, a lunch", (spoiled + sumOf(back)) / lunches.length, "cents"],
    ];
  };
}

/** Mean over the planned weeks; the plan's own weeks count as earlier ones of those after them. */
function echoOf(
  problem: PlanProblem,
  plan: Plan,
  history: readonly ShownWeek[],
  motifs: ReadonlyMap<string, readonly string[]>,
): number {
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const planned = plan.weeks.map(({ monday, themeId, lunches }): ShownWeek => {
    const items = lunches.flatMap(({ date, itemIds }) =>
      itemIds.flatMap((id) => {
        const item = itemOf.get(id);
        if (!item) return [];
        const { foodId, familyId, trickIds } = item;
        return { on: date, foodId, familyId, productId: null, trickIds, isStaple: false };
      }),
    );
    return { week: monday, themeId, motifs: motifs.get(themeId ?? "") ?? [], items };
  });
  const all = [...history, ...planned];
  return meanOf(
    planned.map((week) => {
      const earlier = all.filter((other) => other.week < week.week);
      return closestWeeks(week, earlier, 1)[0]?.echo.value ?? 0;
    }),
  );
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** 0 of nothing. */
export function meanOf(values: readonly number[]): number {
  return sumOf(values) / Math.max(1, values.length);
}
