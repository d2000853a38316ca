import { type Day, mondayOf } from "#lib/calendar/index.ts";
import type { Run, RunLine } from "./runs/problem.ts";
import type { Ticks } from "./ticks.ts";

/** What one week of shopping costs, in cents. A run counts in the ISO week of its day. */
export type WeekCost = {
  readonly week: Day;
  /** Paid where a price was noted, else as planned; without lines that were dropped or not to be had. */
  readonly cents: number;
  /** The part of it that was noted as paid. */
  readonly paidCents: number;
  /** Null when no budget is set. */
  readonly budgetCents: number | null;
  /** Above the budget; zero within it or without one. */
  readonly overCents: number;
};

/** Cost by week against a weekly budget, weeks in order. */
export function weekCosts(
  runs: readonly Run[],
  ticks: Ticks,
  budgetCents: number | null,
): WeekCost[] {
  const weeks = new Map<Day, { cents: number; paidCents: number }>();
  for (const run of runs) {
    const week = mondayOf(run.day);
    const sum = weeks.get(week) ?? { cents: 0, paidCents: 0 };
    for (const line of run.lines) {
      const { cents, paidCents } = lineCost(line, ticks);
      sum.cents += cents;
      sum.paidCents += paidCents;
    }
    weeks.set(week, sum);
  }
  return [...weeks]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([week, sum]) => ({
      week,
      ...sum,
      budgetCents,
      overCents: budgetCents === null ? 0 : Math.max(0, sum.cents - budgetCents),
    }));
}

/** What will be left of a line, to be planned in or owed. */
export type Leftover = {
  readonly lineId: string;
  readonly itemId: string;
  readonly name: string;
  /** As purchased. */
  readonly grams: number;
  /** The last day to use it; null when no source limits it. */
  readonly useBy: Day | null;
};

/**
 * What no planned lunch uses, soonest use-by first: offered back to the planner as owed. Scraps below
 * `gramsMin` are left out.
 */
export function leftoversOf(runs: readonly Run[], gramsMin = 1): Leftover[] {
  return runs
    .flatMap((run) => run.lines)
    .filter((line) => line.leftGrams >= gramsMin)
    .map((line) => ({
      lineId: line.id,
      itemId: line.itemId,
      name: line.name,
      grams: line.leftGrams,
      useBy: line.leftUntil,
    }))
    .sort(
      (one, other) =>
        compareText(one.useBy ?? "9999", other.useBy ?? "9999") ||
        compareText(one.lineId, other.lineId),
    );
}

function lineCost(line: RunLine, ticks: Ticks): { cents: number; paidCents: number } {
  const tick = ticks.get(line.id);
  if (tick?.state === "dropped" || tick?.state === "none-left") return { cents: 0, paidCents: 0 };
  const planned = (tick?.state === "bought" ? tick.packs : line.packs) * line.priceCents;
  const paid = tick?.paidCents ?? null;
  return { cents: paid ?? planned, paidCents: paid ?? 0 };
}

function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
