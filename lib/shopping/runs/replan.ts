import { type RunBudget, RUN_BUDGET, planRuns } from "./plan-runs.ts";
import type { Run, RunItem, RunPlan, RunProblem, Trip } from "./problem.ts";
import { baseOf, canStay, isSameTrip, type StandingPlan } from "./standing.ts";

/**
 * The plan after a change, which leaves alone what does not depend on it: items with the same needs,
 * stock, offers and decisions keep their lines, on trips that are made anyway; only the others are
 * planned anew. Its proof speaks of these. A plan from nothing (`planRuns`) may be cheaper.
 */
export function replanRuns(
  standing: StandingPlan,
  after: RunProblem,
  budget: RunBudget = RUN_BUDGET,
): RunPlan {
  const { plan } = standing;
  const kept = new Set(after.items.filter((item) => isKept(standing, after, item)).map(idOf));
  const keptRuns = plan.runs
    .map((run) => ({ ...run, lines: run.lines.filter((line) => kept.has(line.itemId)) }))
    .filter((run) => run.lines.length > 0);
  const rest = planRuns(
    {
      ...after,
      items: after.items.filter((item) => !kept.has(item.id)),
      overrides: { ...after.overrides, goTo: [...after.overrides.goTo, ...keptRuns] },
    },
    budget,
  );
  return joined(after, { ...plan, runs: keptRuns }, rest, kept);
}

function isKept({ plan, ...standing }: StandingPlan, after: RunProblem, item: RunItem): boolean {
  if (standing.bases[item.id] !== baseOf(after, item)) return false;
  if (standing.leadDays !== after.leadDays) return false;
  if (plan.unmet.some((miss) => miss.itemId === item.id)) return false;
  const lines = plan.runs.flatMap((run) => run.lines).filter((line) => line.itemId === item.id);
  return lines.every((line) => canStay(after, line));
}

function joined(problem: RunProblem, kept: RunPlan, rest: RunPlan, ids: Set<string>): RunPlan {
  const runs = rest.runs.map((run): Run => ({
    ...run,
    lines: [...kept.runs.flatMap((old) => (isSameTrip(old, run) ? old.lines : [])), ...run.lines],
  }));
  const lines = kept.runs.flatMap((run) => run.lines);
  const goods = sum(lines.map((line) => line.packs * line.priceCents));
  const waste = sum(lines.map((line) => line.leftGrams * wasteCents(problem, line.itemId)));
  const trips = sum(kept.runs.map((run) => tripCents(problem, run)));
  const parts = {
    goodsCents: rest.goodsCents + goods,
    tripCents: rest.tripCents + trips,
    wasteCents: rest.wasteCents + waste,
  };
  return {
    ...rest,
    ...parts,
    runs,
    fromStock: [...kept.fromStock.filter((use) => ids.has(use.itemId)), ...rest.fromStock],
    cost: parts.goodsCents + parts.tripCents + parts.wasteCents,
    bound: rest.bound + goods + waste + trips,
  };
}

function tripCents({ trips, overrides }: RunProblem, run: Trip): number {
  const isMade = [...overrides.goTo, ...overrides.lines].some((trip) => isSameTrip(trip, run));
  return isMade ? 0 : (trips.find((trip) => isSameTrip(trip, run))?.cents ?? 0);
}

function wasteCents({ items }: RunProblem, itemId: string): number {
  return items.find((item) => item.id === itemId)?.wasteCentsPerGram ?? 0;
}

function idOf(item: RunItem): string {
  return item.id;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, next) => total + next, 0);
}
