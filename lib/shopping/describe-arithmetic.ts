import pluralize from "pluralize";
import { longWeekday } from "#lib/calendar/index.ts";
import { describeAmount, describeWeighProblem } from "#lib/catalog/index.ts";
import type { Arithmetic } from "./arithmetic.ts";
import type { NeedProblem } from "./need.ts";

/** Less than this is not worth a word. */
const TRACE_GRAMS = 0.5;

/** A weight as a shopper says it: "92 g", "1.25 kg". */
export function describeGrams(grams: number): string {
  if (grams >= 1000) return `${Number((grams / 1000).toFixed(2))} kg`;
  return `${grams < 10 ? Number(grams.toFixed(1)) : Math.round(grams)} g`;
}

/**
 * The arithmetic of a line on one line: "3 × ¼ cup → 92 g → 1 bag of 340 g, 248 g left for Thursday".
 * Steps that change nothing are left out.
 */
export function describeArithmetic(arithmetic: Arithmetic): string {
  const { edibleGrams, asPurchasedGrams, fromStockGrams, fromOthersGrams } = arithmetic;
  const isPeeled = Math.abs(edibleGrams - asPurchasedGrams) >= TRACE_GRAMS;
  const steps = [
    arithmetic.portions.map(describePortion).join(" + "),
    describeGrams(edibleGrams) + (isPeeled ? " ready to eat" : ""),
    isPeeled ? `${describeGrams(asPurchasedGrams)} as bought` : "",
    fromStockGrams < TRACE_GRAMS ? "" : `less ${describeGrams(fromStockGrams)} at home`,
    fromOthersGrams < TRACE_GRAMS ? "" : `less ${describeGrams(fromOthersGrams)} from another pack`,
    describePacks(arithmetic.packs, arithmetic.packWord, arithmetic.packGrams) +
      describeRest(arithmetic),
  ];
  return steps.filter((step) => step !== "").join(" → ");
}

/** "1 bag of 340 g", "2 tubs of 200 g". */
export function describePacks(packs: number, packWord: string, packGrams: number): string {
  return `${pluralize(packWord, packs, true)} of ${describeGrams(packGrams)}`;
}

/** A refusal to work out a need, in a sentence that says what to enter. */
export function describeNeedProblem(problem: NeedProblem): string {
  switch (problem.kind) {
    case "cannot-weigh":
      return describeWeighProblem(problem.why);
    case "portion-not-a-number":
      return "A child's portion must be a number of zero or more.";
  }
}

function describePortion({ count, amount, unit }: Arithmetic["portions"][number]): string {
  return `${count} × ${describeAmount(amount, unit)}`;
}

function describeRest({ leftGrams, laterDays, overGrams }: Arithmetic): string {
  if (leftGrams < TRACE_GRAMS) return "";
  if (laterDays.length === 0) return `, ${describeGrams(leftGrams)} left over`;
  const days = listed(laterDays.map(longWeekday));
  const over = overGrams < TRACE_GRAMS ? "" : `, ${describeGrams(overGrams)} of it left over`;
  return `, ${describeGrams(leftGrams)} left for ${days}${over}`;
}

/** "Tuesday", "Tuesday and Thursday", "Monday, Tuesday and Thursday". */
function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
