import { groupBy, numberOf, sumOfFractions } from "#lib/base/index.ts";
import {
  addDays,
  longWeekday,
  mondayOf,
  weekdayOf,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import { keepUntilWritten, type Db, type Settings } from "#lib/db/index.ts";
import {
  describeLeftovers,
  describeNeedProblem,
  describeProof,
  describeUnmet,
  describeWeekCost,
  leftoversOf,
  type Money,
  type NeedProblem,
} from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { moneyIn } from "./money.ts";
import { costOf, runViews, type RunView } from "./run-view.ts";
import { standingWeek, WEEKS_AHEAD_MAX, type StandingWeek } from "./standing-week.ts";

/** An amount that cannot be weighed, and what to say. */
type AskView = {
  readonly itemId: string;
  readonly day: Day;
  readonly foodId: string;
  readonly food: string;
  readonly unit: string;
  readonly question: string;
  /** Whether saying what one of the unit weighs answers it. */
  readonly isWeight: boolean;
};

/** Food made at home for the week's lunches: its ingredients are not on the lists. */
type HomeMadeView = {
  readonly name: string;
  readonly grams: number;
  readonly days: readonly string[];
};

export type ErrandsView = {
  readonly monday: Day;
  readonly title: string | undefined;
  readonly currency: string;
  readonly runs: readonly RunView[];
  readonly asks: readonly AskView[];
  readonly unmet: readonly string[];
  readonly homeMade: readonly HomeMadeView[];
  /** Foods that stock covers, with the days. */
  readonly fromStock: readonly string[];
  readonly leftovers: readonly string[];
  readonly cost: {
    readonly sentence: string;
    readonly overCents: number;
    readonly paidCents: number;
  };
  readonly proof: string;
  readonly isProven: boolean;
  readonly hasLunches: boolean;
  readonly hasChildren: boolean;
  readonly hasShops: boolean;
  /** Trips that could be made besides. */
  readonly otherTrips: readonly {
    readonly shopId: string;
    readonly shopName: string;
    readonly day: Day;
  }[];
  /** Trips that are not made, by the user's word. */
  readonly notTo: readonly {
    readonly shopId: string;
    readonly shopName: string;
    readonly day: Day;
  }[];
  readonly onlyAt: readonly {
    readonly foodId: string;
    readonly food: string;
    readonly shopName: string;
  }[];
};

/** The week whose errands are next: this one until its last lunch is packed, then the next. */
export function weekToShopFor(today: Day): Day {
  return weekdayOf(today) >= 5 ? weeksLater(mondayOf(today), 1) : mondayOf(today);
}

/** The errands of a week, or undefined when it lies beyond the weeks that are planned for. */
export async function loadErrands(
  { db, today }: Context,
  monday: Day,
): Promise<ErrandsView | undefined> {
  if (monday > weeksLater(mondayOf(today), WEEKS_AHEAD_MAX)) return undefined;
  return keepUntilWritten(db, `errands ${today} ${monday}`, async () => {
    return viewOf(db, await standingWeek(db, today, monday), monday);
  });
}

async function viewOf(db: Db, week: StandingWeek, monday: Day): Promise<ErrandsView> {
  const { ground, plan, records, question } = week;
  const { currency, weekBudgetCents } = ground.settings;
  const money = moneyIn(currency);
  const runs = runViews(week, await namesOf(db, week));
  const lines = runs.flatMap((run) => run.aisles.flatMap((aisle) => aisle.lines));
  const cents = lines.reduce((sum, line) => sum + costOf(line), 0);
  const overCents = weekBudgetCents === null ? 0 : Math.max(0, cents - weekBudgetCents);
  const paidCents = lines.reduce((sum, line) => sum + (line.paidCents ?? 0), 0);
  const episode = ground.episodes.find((one) => one.weekOf === monday);
  const shopName = (id: string): string => ground.shops.find((shop) => shop.id === id)?.name ?? id;
  return {
    monday,
    title: episode && (episode.theme?.name ?? (episode.workingTitle || "Untitled week")),
    currency,
    runs,
    asks: asksOf(week, monday),
    unmet: plan.unmet.map(describeUnmet),
    homeMade: homeMadeOf(week, monday),
    fromStock: stockWords(week),
    leftovers: describeLeftovers(leftoversOf(plan.runs)),
    cost: {
      sentence: describeWeekCost(
        { week: monday, cents, paidCents, budgetCents: weekBudgetCents, overCents },
        money,
      ),
      overCents,
      paidCents,
    },
    proof: proofOf(week, money),
    isProven: plan.proven,
    hasLunches: (episode?.lunches ?? []).some((lunch) => lunch.items.length > 0),
    hasChildren: ground.children.some((child) => !child.isRetired),
    hasShops: ground.shops.some((shop) => shop.id !== "any-shop"),
    otherTrips: question.problem.trips
      .filter(({ shopId, day }) => !runs.some((run) => run.shopId === shopId && run.day === day))
      .map(({ shopId, day }) => ({ shopId, day, shopName: shopName(shopId) })),
    notTo: records.record.decisions.notTo
      .filter(({ day }) => day >= ground.today)
      .map(({ shopId, day }) => ({ shopId, day, shopName: shopName(shopId) })),
    onlyAt: onlyAtOf(week).map(({ foodId, shopId }) => ({
      foodId,
      food: ground.foods.get(foodId)?.name ?? foodId,
      shopName: shopName(shopId),
    })),
  };
}

/** The user's one-shop foods that this week asks for. */
function onlyAtOf({ ground, question }: StandingWeek): Settings["onlyAt"] {
  return ground.settings.onlyAt.filter(({ foodId }) => question.foods.has(foodId));
}

function proofOf({ plan }: StandingWeek, money: Money): string {
  return plan.runs.some((run) => run.lines.length > 0) ? describeProof(plan, money) : "";
}

/** Names of the products and foods that recorded lines stand for. */
async function namesOf(db: Db, { records }: StandingWeek): Promise<ReadonlyMap<string, string>> {
  const lines = records.runs.flatMap((run) => run.lines);
  const [products, foods] = await Promise.all([
    db.product.findMany({
      where: { id: { in: lines.flatMap((line) => line.productId ?? []) } },
      select: { id: true, name: true },
    }),
    db.food.findMany({
      where: { id: { in: lines.flatMap((line) => line.foodId ?? []) } },
      select: { id: true, name: true },
    }),
  ]);
  return new Map([...foods, ...products].map(({ id, name }) => [id, name]));
}

function asksOf({ ground }: StandingWeek, monday: Day): AskView[] {
  return ground.problems.flatMap((problem) => {
    const item = ground.items.find((one) => one.id === problem.itemId);
    if (item?.weekOf !== monday) return [];
    return [
      {
        itemId: item.id,
        day: item.day,
        foodId: item.food.id,
        food: item.food.name,
        unit: item.unit,
        question: describeNeedProblem(problem),
        isWeight: asksForWeight(problem),
      },
    ];
  });
}

function asksForWeight(problem: NeedProblem): boolean {
  return problem.kind === "cannot-weigh" && problem.why.kind !== "amount-not-positive";
}

function homeMadeOf({ ground }: StandingWeek, monday: Day): HomeMadeView[] {
  const ids = new Set(ground.items.filter((one) => one.weekOf === monday).map((one) => one.id));
  const own = ground.needs.filter(
    (need) => ids.has(need.itemId) && ground.homeMade.has(need.foodId),
  );
  return [...groupBy(own, (need) => need.foodId)].map(([, needs]) => ({
    name: needs[0]?.foodName ?? "",
    grams: numberOf(sumOfFractions(needs.map((need) => need.edible))),
    days: [...new Set(needs.map((need) => need.day))].sort().map(longWeekday),
  }));
}

function stockWords({ plan, question, ground }: StandingWeek): string[] {
  const name = (itemId: string): string =>
    question.problem.items.find((item) => item.id === itemId)?.name ?? itemId;
  const lotOf = new Map(ground.lots.map((lot) => [lot.id, lot]));
  return [...groupBy(plan.fromStock, (use) => use.itemId)].map(([itemId, uses]) => {
    const grams = Math.round(uses.reduce((sum, use) => sum + use.grams, 0));
    const days = [...new Set(uses.map((use) => use.day))].sort().map(longWeekday);
    const isHere = uses.every((use) => lotOf.has(use.lotId) || use.lotId.startsWith("dropped:"));
    const from = isHere ? "" : ", left from the week before";
    return `${name(itemId)}: ${grams} g for ${days.join(", ")}${from}`;
  });
}

/** The last day a week's page can be opened for, seen from today. */
export function lastErrandWeek(today: Day): Day {
  return addDays(mondayOf(today), 7 * WEEKS_AHEAD_MAX);
}
