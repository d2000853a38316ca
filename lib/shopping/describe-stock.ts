import { mediumDay } from "#lib/calendar/index.ts";
import type { Leftover } from "./cost.ts";
import { describeGrams } from "./describe-arithmetic.ts";
import type { OpenOwed, SettleProblem } from "./owed.ts";
import type { StockProblem, UseFirst } from "./stock.ts";

/** The caution that goes with every life that comes from a reference table. */
export const LIFE_CAUTION =
  "Storage times are reference values for food kept well. The label comes first, and what looks or smells wrong goes.";

/** When a lot has to be used: "hummus, 120 g, opened: by Thu 12 March, in 2 days". */
export function describeUseFirst({ lot, lastDay, daysLeft }: UseFirst, name: string): string {
  const what = `${name}, ${describeGrams(lot.grams)}${lot.openedOn === null ? "" : ", opened"}`;
  if (lastDay === null || daysLeft === null) return `${what}: no use-by known, look at the label`;
  return `${what}: by ${mediumDay(lastDay)}, ${inDays(daysLeft)}`;
}

/** An owed food: "pears, 200 g, from Mon 9 March: by Thu 12 March, in 2 days". */
export function describeOwed({ owed, daysLeft }: OpenOwed): string {
  const what = `${owed.foodName}, ${describeGrams(owed.grams)}, from ${mediumDay(owed.since)}`;
  if (owed.useBy === null || daysLeft === null)
    return `${what}: no use-by known, look at the label`;
  return `${what}: by ${mediumDay(owed.useBy)}, ${inDays(daysLeft)}`;
}

/** Leftovers as offered to the planner: "248 g of grapes, by Thu 12 March"; those without a date in one. */
export function describeLeftovers(leftovers: readonly Leftover[]): string[] {
  const lines = leftovers.flatMap(({ name, grams, useBy }) =>
    useBy === null ? [] : [`${describeGrams(grams)} of ${name}, by ${mediumDay(useBy)}`],
  );
  const others = leftovers
    .filter(({ useBy }) => useBy === null)
    .map(({ name, grams }) => `${describeGrams(grams)} of ${name}`);
  if (others.length > 0) lines.push(`${others.join(", ")}: no use-by known, look at the label`);
  return lines;
}

/** Why stock cannot be changed so. */
export function describeStockProblem(problem: StockProblem): string {
  switch (problem.kind) {
    case "not-that-much-left":
      return `Only ${describeGrams(problem.left)} are left.`;
    case "past-its-life":
      return `Its last day was ${mediumDay(problem.lastDay)}. Let it go.`;
    case "freezing-not-advised":
      return "No source gives a time in the freezer for it, so it is not put there.";
  }
}

/** Why an owed food cannot be settled so. */
export function describeSettleProblem(problem: SettleProblem): string {
  switch (problem.kind) {
    case "already-settled":
      return `It was settled on ${mediumDay(problem.on)} already.`;
    case "past-its-use-by":
      return `Its use-by was ${mediumDay(problem.useBy)}. It can only be let go.`;
  }
}

function inDays(days: number): string {
  if (days < 0) return days === -1 ? "1 day over" : `${-days} days over`;
  if (days === 0) return "today";
  return days === 1 ? "tomorrow" : `in ${days} days`;
}
