import { drawNormal, randomFrom } from "#lib/base/index.ts";
import { day, mondayOf, monthsLater, weeksLater, type Day } from "#lib/calendar/index.ts";
import { readFoods, type Database } from "#lib/db/index.ts";
import { proposePlan, type Plan, type PlanProblem } from "#lib/planner/index.ts";
import { eatenFromShare } from "#lib/reactions/index.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { changeProposal } from "#lib/use-cases/proposal/change-proposal.ts";
import { readDesk } from "#lib/use-cases/proposal/desk.ts";
import { openWeeks } from "#lib/use-cases/proposal/open-weeks.ts";
import { logistic, tasteOf, trickUtility } from "#seed/demo/taste.ts";
import { brokenRules } from "#tests/support/check-plan.ts";
import { onDemo, solvedPlan } from "./on-demo.ts";

type Figure = { name: string; value: number; unit: string };

const TODAY = day("2026-03-11");
const FIRST_MONTH = day("2026-05-01");
const MONTHS = 12;
/** Spread of a day's mood on the logit, as the demo's taste model has it. */
const MOOD = 0.25;

/** One child's verdict on one food, with the share that the taste model says. */
type Bite = { readonly foodId: string; readonly on: Day; readonly share: number };

type Planner = (problem: PlanProblem) => Promise<Plan>;

/**
 * Twelve months planned, eaten by the demo's taste model and learned from, one after another; beside them,
 * for comparison, the same months by the plain filler, mended by search where it breaks a rule.
 */
export async function benchLoop(): Promise<Figure[]> {
  return [
    ...(await runLoop("closed loop", solved)),
    ...(await runLoop("the same by the plain filler", filled)),
  ];
}

function solved(problem: PlanProblem): Promise<Plan> {
  return solvedPlan(problem, { seed: "loop", roundsMax: 0 });
}

/** As few steps of search as it takes to break no rule, usually none. */
function filled(problem: PlanProblem, steps = 0): Promise<Plan> {
  const { plan, broken } = proposePlan(problem, { seed: "loop", steps });
  return broken > 0 ? filled(problem, Math.max(500, 2 * steps)) : Promise.resolve(plan);
}

function runLoop(words: string, planner: Planner): Promise<Figure[]> {
  return onDemo(TODAY, (db) => loop(db, words, planner));
}

async function loop(db: Database, words: string, planner: Planner): Promise<Figure[]> {
  const known = await db.lunchItem.findMany({ distinct: ["foodId"], select: { foodId: true } });
  const eat = await eater(db);
  const quarters: Bite[][] = [[], [], [], []];
  let rests = 0;
  let others = 0;
  for (let ahead = 0; ahead < MONTHS; ahead += 1) {
    const month = monthsLater(FIRST_MONTH, ahead);
    const context = { db, today: month, now: new Date(`${month}T09:00:00Z`) };
    const mondays = await openWeeks(context, month);
    const problem = await planProblemFor(db, mondays, month);
    await changeProposal(context, { step: "propose", month, scope: "rest", sliders: {} });
    const stored = await readDesk(db, mondays, "open");
    if (!stored) throw new Error(`nothing was proposed for ${month}`);
    const plan = await planner(problem);
    const planJson = JSON.stringify({ ...stored.desk, plan });
    await db.proposal.update({ where: { id: stored.id }, data: { planJson } });
    const broken = brokenRules(problem, plan);
    rests += broken.filter((words) => words.startsWith("rest of")).length;
    others += broken.filter((words) => !words.startsWith("rest of")).length;
    const taken = await changeProposal(context, { step: "take", month });
    if (!taken.ok) throw new Error(`${month}: ${taken.problem.kind}`);
    quarters[Math.floor((ahead * 4) / MONTHS)]?.push(...(await eat(mondays)));
  }
  return [
    ...quarters.map((bites, quarter) => ({
      name: `${words}, quarter ${quarter + 1}, eaten of what was packed`,
      value: 100 * meanShare(bites),
      unit: "%",
    })),
    ...discoveriesIn(words, quarters.flat(), new Set(known.map(({ foodId }) => foodId))),
    { name: `${words}, rests broken`, value: rests, unit: "" },
    { name: `${words}, other rules broken`, value: others, unit: "" },
  ];
}

/** Packs the lunches of some weeks and logs what the taste model says came back. */
async function eater(db: Database): Promise<(mondays: readonly Day[]) => Promise<Bite[]>> {
  const taste = tasteOf(await readFoods(db), "tin harbour", weeksLater(mondayOf(TODAY), -52));
  const children = await db.child.findMany({ where: { retiredAt: null }, select: { id: true } });
  const random = randomFrom("closed loop");
  const tastings = new Map<string, number>();
  const before = await db.reaction.findMany({
    where: { eaten: { gt: 0 } },
    select: { childId: true, item: { select: { foodId: true } } },
  });
  const noteTasting = (key: string): void => {
    tastings.set(key, (tastings.get(key) ?? 0) + 1);
  };
  for (const { childId, item } of before) noteTasting(`${childId} ${item.foodId}`);
  return async (mondays) => {
    const lunches = await db.lunch.findMany({
      where: { episode: { weekOf: { in: [...mondays] } } },
      orderBy: { date: "asc" },
      include: { items: { include: { tricks: { include: { trick: true } } } } },
    });
    const bites: Bite[] = [];
    const rows = lunches.flatMap((lunch) =>
      children.flatMap(({ id: childId }) => {
        const mood = MOOD * drawNormal(random);
        return lunch.items.map(({ id: itemId, foodId, tricks }) => {
          const on = day(lunch.date);
          const key = `${childId} ${foodId}`;
          const extra = tricks.reduce((sum, { trick }) => sum + trickUtility(trick.kind), 0);
          const utility = taste.utility(childId, foodId, on, tastings.get(key) ?? 0);
          const share = logistic(utility + mood + extra);
          const eaten = eatenFromShare(share);
          if (eaten > 0) noteTasting(key);
          bites.push({ foodId, on, share });
          return { itemId, childId, eaten, loggedAt: new Date(`${on}T16:00:00Z`) };
        });
      }),
    );
    const ids = lunches.map(({ id }) => id);
    await db.lunch.updateMany({ where: { id: { in: ids } }, data: { packedAt: new Date() } });
    await db.lunchItem.updateMany({ where: { lunchId: { in: ids } }, data: { fate: "packed" } });
    await db.reaction.createMany({ data: rows });
    return bites;
  };
}

/** Foods met in the year, those packed on two days or more, and those of them eaten by half or more. */
function discoveriesIn(
  words: string,
  bites: readonly Bite[],
  known: ReadonlySet<string>,
): Figure[] {
  const met = new Set(bites.map(({ foodId }) => foodId).filter((id) => !known.has(id)));
  const again = [...met].filter(
    (id) => new Set(bites.filter(({ foodId }) => foodId === id).map(({ on }) => on)).size > 1,
  );
  const liked = again.filter((id) => meanShare(bites.filter((bite) => bite.foodId === id)) >= 0.5);
  return [
    { name: `${words}, discoveries filmed`, value: met.size, unit: "foods" },
    { name: `${words}, discoveries that came again`, value: again.length, unit: "foods" },
    { name: `${words}, of those eaten by half or more`, value: liked.length, unit: "foods" },
  ];
}

function meanShare(bites: readonly Bite[]): number {
  return bites.reduce((sum, { share }) => sum + share, 0) / Math.max(1, bites.length);
}
