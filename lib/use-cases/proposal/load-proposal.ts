import { addDays, Day, daySpan, mediumDay } from "#lib/calendar/index.ts";
import type { Colour, Food, Pattern } from "#lib/catalog/index.ts";
import { readFoods } from "#lib/db/index.ts";
import {
  AIM_WORDS,
  AIMS,
  momentsOf,
  reasonsFor,
  scorePlan,
  standIns,
  whyNot,
  type Aim,
  type AimPoints,
  type Plan,
  type PlanItem,
  type PlanProblem,
  type StandIn,
} from "#lib/planner/index.ts";
import type { Context } from "../context.ts";
import { shootDays } from "../pencil-week.ts";
import { planProblemFor } from "../plan-problem.ts";
import { readDesk, stampOfDesk, withWishes, type Desk, NO_WISHES } from "./desk.ts";
import { describeWhyNot } from "./describe-why-not.ts";
import { openWeeks } from "./open-weeks.ts";

type ProposedItem = {
  readonly id: string;
  readonly name: string;
  readonly part: string;
  readonly grams: number;
  readonly colour: Colour;
  readonly pattern: Pattern;
  readonly isLocked: boolean;
};

export type ProposedWeek = {
  readonly monday: Day;
  readonly span: string;
  readonly theme: string;
  readonly lunches: readonly {
    readonly date: Day;
    readonly minutes: number;
    readonly items: readonly ProposedItem[];
  }[];
};

/** An item the user looks at: why it is there, what else could be, and what that would change. */
export type PickedItem = {
  readonly date: Day;
  readonly item: ProposedItem;
  readonly reasons: readonly string[];
  readonly runnerUp: string;
  readonly standIns: readonly {
    readonly id: string;
    readonly name: string;
    readonly cost: string;
  }[];
  readonly isPreferred: boolean;
};

export type ProposalView = {
  /** Weeks that can be planned at all. */
  readonly openCount: number;
  /** What the weeks to plan may be about: feasts, round numbers, the day of the series. */
  readonly moments: readonly string[];
  readonly sliders: readonly { readonly aim: Aim; readonly words: string; readonly at: number }[];
  readonly shown:
    | {
        readonly weeks: readonly ProposedWeek[];
        readonly proof: Desk["proof"];
        /** Handed back when the proposal is taken, so that nobody takes what they have not seen. */
        readonly stamp: string;
        readonly aims: AimPoints;
        readonly canUndo: boolean;
        readonly bans: readonly { readonly id: string; readonly name: string }[];
        readonly preferred: readonly { readonly id: string; readonly name: string }[];
        readonly picked: PickedItem | undefined;
        readonly answer: string | undefined;
        readonly beside:
          { readonly weeks: readonly ProposedWeek[]; readonly aims: AimPoints } | undefined;
        /** Foods that are not in the plan, to ask about. */
        readonly others: readonly { readonly id: string; readonly name: string }[];
      }
    | undefined;
};

/** The proposal of a month's open weeks; `pick` is an item looked at, `ask` one that is not there. */
export async function loadProposal(
  context: Context,
  month: Day,
  looking: {
    readonly pick?: { readonly date: Day; readonly itemId: string };
    readonly ask?: string;
  },
): Promise<ProposalView> {
  const mondays = await openWeeks(context, month);
  const stored = await readDesk(context.db, mondays, "open");
  const wishes = stored?.desk.wishes ?? NO_WISHES;
  const sliders = AIMS.filter((aim) => aim !== "wishes").map((aim) => ({
    aim,
    words: AIM_WORDS[aim],
    at: wishes.weights[aim],
  }));
  const moments = await readMoments(context, mondays);
  if (!stored) return { openCount: mondays.length, moments, sliders, shown: undefined };
  const problem = withWishes(await planProblemFor(context.db, mondays, context.today), wishes);
  const [foods, beside] = await Promise.all([
    readFoods(context.db),
    readDesk(context.db, mondays, "beside"),
  ]);
  const draw = drawer(problem, foods, wishes);
  const { plan, proof, before } = stored.desk;
  const named = (ids: readonly string[]): { id: string; name: string }[] =>
    ids.map((id) => ({ id, name: draw.name(id) }));
  const planned = new Set(plan.weeks.flatMap((week) => week.lunches).flatMap((l) => l.itemIds));
  const there = new Set(
    problem.items.filter(({ id }) => planned.has(id)).map(({ foodId }) => foodId),
  );
  return {
    openCount: mondays.length,
    moments,
    sliders,
    shown: {
      weeks: draw.weeks(plan),
      proof,
      stamp: stampOfDesk(stored.desk),
      aims: scorePlan(problem, plan).aims,
      canUndo: before.length > 0,
      bans: named(wishes.bans),
      preferred: named(wishes.preferred),
      picked: looking.pick && pickItem(problem, plan, draw, looking.pick),
      answer:
        looking.ask === undefined
          ? undefined
          : describeWhyNot(draw.name(looking.ask), whyNot(problem, plan, looking.ask), draw.name),
      beside: beside && {
        weeks: draw.weeks(beside.desk.plan),
        aims: scorePlan(problem, beside.desk.plan).aims,
      },
      others: problem.items
        .filter(({ foodId, trickIds }) => trickIds.length === 0 && !there.has(foodId))
        .map(({ id, name }) => ({ id, name }))
        .sort((one, other) => (one.name < other.name ? -1 : 1)),
    },
  };
}

async function readMoments({ db }: Context, mondays: readonly Day[]): Promise<string[]> {
  const [monday] = mondays;
  if (monday === undefined) return [];
  const [before, first, days] = await Promise.all([
    db.lunch.count({ where: { date: { lt: monday } } }),
    db.lunch.findFirst({ orderBy: { date: "asc" }, select: { date: true } }),
    Promise.all(mondays.map((one) => shootDays(db, one))),
  ]);
  const firstOn = first ? Day.parse(first.date) : undefined;
  return momentsOf(mondays, days.flat(), before, firstOn).map(({ words }) => words);
}

type Drawer = {
  readonly name: (id: string) => string;
  readonly item: (id: string, date: Day) => ProposedItem[];
  readonly weeks: (plan: Plan) => ProposedWeek[];
  readonly isPreferred: (id: string) => boolean;
};

function drawer(problem: PlanProblem, foods: readonly Food[], wishes: Desk["wishes"]): Drawer {
  const itemOf = new Map<string, PlanItem>(problem.items.map((item) => [item.id, item]));
  const foodOf = new Map(foods.map((food) => [String(food.id), food]));
  const themeOf = new Map(problem.themes.map(({ id, name }) => [id, name]));
  const name = (id: string): string => itemOf.get(id)?.name ?? "a food no longer in the Larder";
  const item = (id: string, date: Day): ProposedItem[] => {
    const planned = itemOf.get(id);
    const food = planned && foodOf.get(planned.foodId);
    if (!planned || !food) return [];
    return [
      {
        id,
        name: planned.name.charAt(0).toUpperCase() + planned.name.slice(1),
        part: planned.part,
        grams: food.servingGrams,
        colour: food.colours[0] ?? "cream",
        pattern: food.pattern,
        isLocked: wishes.locks.some((lock) => lock.date === date && lock.itemId === id),
      },
    ];
  };
  const weeks = (plan: Plan): ProposedWeek[] =>
    plan.weeks.map(({ monday, themeId, lunches }) => ({
      monday,
      span: daySpan(monday, addDays(monday, 4)),
      theme: themeOf.get(themeId ?? "") ?? "No theme",
      lunches: lunches.map(({ date, itemIds }) => ({
        date,
        minutes: itemIds.reduce((sum, id) => sum + (itemOf.get(id)?.minutes ?? 0), 0),
        items: itemIds.flatMap((id) => item(id, date)),
      })),
    }));
  return { name, item, weeks, isPreferred: (id) => wishes.preferred.includes(id) };
}

function pickItem(
  problem: PlanProblem,
  plan: Plan,
  draw: Drawer,
  { date, itemId }: { readonly date: Day; readonly itemId: string },
): PickedItem | undefined {
  const lunch = plan.weeks.flatMap((week) => week.lunches).find((one) => one.date === date);
  const [item] = lunch?.itemIds.includes(itemId) ? draw.item(itemId, date) : [];
  if (!item) return undefined;
  const { reasons, runnerUp } = reasonsFor(problem, plan, date, itemId);
  return {
    date,
    item,
    isPreferred: draw.isPreferred(itemId),
    reasons: reasons.map(({ aim, points }) => `${AIM_WORDS[aim]} (${signed(points)})`),
    runnerUp: runnerUp
      ? `Next best: ${draw.name(runnerUp.itemId)} (${costOf(runnerUp)}).`
      : `Nothing else fits there on ${mediumDay(date)} without breaking a rule.`,
    standIns: standIns(problem, plan, date, itemId).map((standIn) => ({
      id: standIn.itemId,
      name: draw.name(standIn.itemId),
      cost: costOf(standIn),
    })),
  };
}

/** "6 points less: the children will eat it −4, few shops −2". */
function costOf({ points, aims }: StandIn): string {
  const size = Math.abs(points).toFixed(1);
  const head =
    points < -0.05
      ? `${size} points less`
      : points > 0.05
        ? `${size} points more`
        : "worth the same";
  const parts = aims
    .slice(0, 2)
    .map(({ aim, points: change }) => `${AIM_WORDS[aim]} ${signed(change)}`);
  return parts.length > 0 ? `${head}: ${parts.join(", ")}` : head;
}

function signed(points: number): string {
  return `${points < 0 ? "−" : "+"}${Math.abs(points).toFixed(1)}`;
}
