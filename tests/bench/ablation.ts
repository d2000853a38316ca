import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { groupBy } from "#lib/base/index.ts";
import { day, mondayOf, weeksLater, type Day } from "#lib/calendar/index.ts";
import { applyMigrations, openDatabase, readFoods, readTricks, type Db } from "#lib/db/index.ts";
import {
  AIM_WORDS,
  AIMS,
  planMonth,
  proposePlan,
  scorePlan,
  USUAL_MONTH,
  type Plan,
  type PlanItem,
  type PlanProblem,
} from "#lib/planner/index.ts";
import { closestWeeks, type ShownWeek } from "#lib/repeats/index.ts";
import { loadCatalogue } from "#lib/use-cases/load-catalogue.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { readShownWeeks } from "#lib/use-cases/shown-weeks.ts";
import { loadSolver } from "#lib/use-cases/solver/highs-solver.ts";
import { logistic, tasteOf, trickUtility } from "#seed/demo/taste.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceCatalogue, referenceThemes } from "#seed/index.ts";
import { brokenRules } from "#tests/support/check-plan.ts";

type Figure = { name: string; value: number; unit: string };

const TODAY = day("2026-03-11");
const STARTS = ["2026-04-06", "2026-05-11"].map((monday) => day(monday));

/** The demo's months planned three ways, each aim, the broken rules, echo and what is truly eaten. */
export async function benchAblation(): Promise<Figure[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-ablation-"));
  const file = path.join(folder, "demo.db");
  applyMigrations(file, path.resolve(import.meta.dirname, "../../prisma/migrations"));
  const db = openDatabase(file);
  try {
    await loadCatalogue(db, referenceCatalogue());
    await loadDemo({ db, today: TODAY, now: new Date() }, tinHarbour, referenceThemes());
    const figures = await Promise.all(STARTS.map((monday) => compare(db, monday)));
    return figures.flat();
  } finally {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function compare(db: Db, monday: Day): Promise<Figure[]> {
  const mondays = [0, 1, 2, 3].map((week) => weeksLater(monday, week));
  const problem = await planProblemFor(db, mondays, TODAY);
  const solver = await loadSolver();
  let best: Plan = { weeks: [] };
  planMonth(problem, solver, { ...USUAL_MONTH, seed: "a", roundsMax: 2 }, (step) => {
    if (step.kind === "plan") best = step.plan;
  });
  const plans: readonly (readonly [string, Plan])[] = [
    ["solver", best],
    ["plain filler", proposePlan(problem, { seed: "a", steps: 0 }).plan],
    [
      "longest not seen",
      proposePlan(problem, { seed: "a", steps: 0, taste: "longest-unseen" }).plan,
    ],
  ];
  const history = await readShownWeeks(db, weeksLater(monday, -60), weeksLater(monday, -1));
  const eaten = await truth(db, problem);
  return plans.flatMap(([way, plan]) => {
    const { aims } = scorePlan(problem, plan);
    const named = (what: string, value: number, unit: string): Figure => ({
      name: `month from ${monday}, ${way}, ${what}`,
      value,
      unit,
    });
    return [
      ...AIMS.map((aim) => named(AIM_WORDS[aim], aims[aim], "points")),
      named("broken rules", brokenRules(problem, plan).length, ""),
      named("echo with the closest earlier week, mean", 100 * echoOf(problem, plan, history), "%"),
      ...eaten(plan).map(([what, value]) => named(what, 100 * value, "%")),
    ];
  });
}

/**
 * What comes back under the taste model that the demo was drawn from: foods as often tasted before as the
 * records say, in their tricks. Refused: less than half of it is expected to be eaten.
 */
async function truth(db: Db, problem: PlanProblem): Promise<(plan: Plan) => [string, number][]> {
  const taste = tasteOf(await readFoods(db), "tin harbour", weeksLater(mondayOf(TODAY), -52));
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
    const packed = plan.weeks
      .flatMap(({ lunches }) => lunches)
      .flatMap(({ date, itemIds }) => itemIds.flatMap((id) => ({ date, item: itemOf.get(id) })));
    const shares = packed.flatMap(({ date, item }) =>
      item === undefined ? [] : problem.children.map(({ id }) => shareOf(id, item, date)),
    );
    const count = Math.max(1, shares.length);
    const eaten = shares.reduce((sum, share) => sum + share, 0) / count;
    return [
      ["truly eaten, mean of both children", eaten],
      ["refused of what is packed", shares.filter((share) => share < 0.5).length / count],
    ];
  };
}

function echoOf(problem: PlanProblem, plan: Plan, history: readonly ShownWeek[]): number {
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const motifs = new Map(history.map((week) => [week.themeId, week.motifs]));
  const echoes = plan.weeks.map(({ monday, themeId, lunches }) => {
    const items = lunches.flatMap(({ date, itemIds }) =>
      itemIds.flatMap((id) => {
        const item = itemOf.get(id);
        if (!item) return [];
        const { foodId, familyId, trickIds } = item;
        return { on: date, foodId, familyId, productId: null, trickIds, isStaple: false };
      }),
    );
    const week: ShownWeek = { week: monday, themeId, motifs: motifs.get(themeId) ?? [], items };
    return closestWeeks(week, history, 1)[0]?.echo.value ?? 0;
  });
  return echoes.reduce((sum, echo) => sum + echo, 0) / Math.max(1, echoes.length);
}
