import { groupBy, type Fraction, fractionOf } from "#lib/base/index.ts";
import { addDays, mondayOf, weeksLater, type Day } from "#lib/calendar/index.ts";
import { readErrandRuns, readErrandWeek, writeErrandWeek, type Db } from "#lib/db/index.ts";
import {
  allocate,
  isStanding,
  onHandOf,
  planRuns,
  replanRuns,
  standingOf,
  type DayNeed,
  type OnHand,
  type RunPlan,
  type RunProblem,
} from "#lib/shopping/index.ts";
import { readErrandGround, type ErrandGround } from "./ground.ts";
import { tellLine } from "./tell-line.ts";
import { foodOf, weekQuestion, type WeekQuestion, type WeekRecords } from "./week-problem.ts";

/** Weeks ahead that errands are planned for. */
export const WEEKS_AHEAD_MAX = 8;

/** Item plans that a page may work out; the search goes on when asked. */
const PAGE_BUDGET = { steps: 40_000, gap: 0 };

/** A week's plan as it stands. */
export type StandingWeek = {
  readonly ground: ErrandGround;
  readonly question: WeekQuestion;
  readonly records: WeekRecords;
  readonly plan: RunPlan;
  /** What is at home, or left by an earlier week's runs, when the week's needs begin. */
  readonly onHand: readonly OnHand[];
};

/**
 * The plan of a week as it stands today. The weeks from this one to it are settled in order, since what
 * one leaves the next can use. Where a week's question has changed, only what depends on the change is
 * planned anew, and the new plan is kept: the same question gives the same plan, so two pages that open
 * at once keep the same.
 */
export async function standingWeek(db: Db, today: Day, monday: Day): Promise<StandingWeek> {
  const ground = await readErrandGround(db, today, monday);
  let onHand = afterToday(ground);
  for (let week = mondayOf(today); ; week = weeksLater(week, 1)) {
    const records = {
      record: await readErrandWeek(db, week),
      runs: await readErrandRuns(db, week),
    };
    const question = weekQuestion(ground, week, records, onHand);
    const plan = planOf(question.problem, records);
    const { standing } = records.record;
    if (plan !== standing?.plan) {
      const told = toldOf(question, plan, records);
      await writeErrandWeek(db, week, { standing: standingOf(question.problem, plan), told });
    }
    if (week >= monday) return { ground, question, records, plan, onHand };
    onHand = afterWeek(question.problem, plan, onHand);
  }
}

function planOf(problem: RunProblem, { record }: WeekRecords): RunPlan {
  if (!record.standing) return planRuns(problem, PAGE_BUDGET);
  if (isStanding(record.standing, problem)) return record.standing.plan;
  return replanRuns(record.standing, problem, PAGE_BUDGET);
}

/** How the lines came about: of the plan, and of those ticked before, which it no longer holds. */
export function toldOf(
  { needs }: WeekQuestion,
  plan: RunPlan,
  { record, runs }: WeekRecords,
): Record<string, string> {
  const ticked = runs.flatMap((run) => run.lines).filter((line) => line.state !== "open");
  const lines = plan.runs.flatMap((run) => run.lines);
  return {
    ...Object.fromEntries(lines.map((line) => [line.id, tellLine(needs, plan, line)])),
    ...Object.fromEntries(ticked.map(({ id }) => [id, record.told[id] ?? ""])),
  };
}

/** What is on hand once today's lunch and what is made at home are served. */
function afterToday(ground: ErrandGround): OnHand[] {
  const foods = new Map(
    [...ground.foods].map(([id, { shelf }]) => [id, { shelf, isOnePiece: false }]),
  );
  const ofToday = ground.needs.filter((need) => need.day <= ground.today);
  return served(
    onHandOf(ground.lots, foods),
    groupBy(ofToday, (need) => need.foodId),
  );
}

function afterWeek(problem: RunProblem, plan: RunPlan, onHand: readonly OnHand[]): OnHand[] {
  const needs = groupBy(
    problem.items.flatMap((item) => item.needs.map((need) => ({ ...need, foodId: foodOf(item) }))),
    (need) => need.foodId,
  );
  const left = plan.runs
    .flatMap((run) => run.lines)
    .filter((line) => line.leftGrams > 0)
    .map((line): OnHand => {
      const item = problem.items.find((one) => one.id === line.itemId);
      const isOpen = line.uses.length > 0;
      return {
        foodId: foodOf({ id: line.itemId }),
        productId: null,
        supply: {
          id: `left:${line.id}`,
          grams: fractionOf(line.leftGrams),
          from: addDays(line.day, problem.leadDays),
          until: line.leftUntil,
          openedDays: isOpen ? null : (item?.lives.openedDays ?? null),
          isOpen,
        },
      };
    });
  return [...served(onHand, needs), ...left];
}

/** What remains of what is on hand when needs are served, food by food. */
function served(
  onHand: readonly OnHand[],
  needs: ReadonlyMap<string, readonly (DayNeed | { day: Day; asPurchased: Fraction })[]>,
): OnHand[] {
  return [...groupBy(onHand, (one) => one.foodId)].flatMap(([foodId, own]) => {
    const days = (needs.get(foodId) ?? []).map((need) => ({
      day: need.day,
      grams: "grams" in need ? need.grams : need.asPurchased,
    }));
    const { left } = allocate(
      days,
      own.map(({ supply }) => supply),
    );
    return left.flatMap((supply) => {
      const known = own.find((one) => one.supply.id === supply.id);
      return known ? [{ ...known, supply }] : [];
    });
  });
}
