import { mediumDay } from "#lib/calendar/index.ts";
import type { WeekCost } from "./cost.ts";
import { describeGrams, describePacks } from "./describe-arithmetic.ts";
import type { Run, RunLine, RunPlan, Unmet } from "./runs/problem.ts";

/** Writes cents in the user's money. */
export type Money = (cents: number) => string;

/** A run in one line: "Sat 7 March, Quayside Greens: 4 lines, about 12.40." */
export function describeRun(
  { shopId, day, lines }: Run,
  shopName: (id: string) => string,
  money: Money,
): string {
  const cents = lines.reduce((sum, line) => sum + line.packs * line.priceCents, 0);
  const count = lines.length === 1 ? "1 line" : `${lines.length} lines`;
  return `${mediumDay(day)}, ${shopName(shopId)}: ${count}, about ${money(cents)}.`;
}

/** A line of a run: "hummus: 2 tubs of 200 g". */
export function describeRunLine({ productName, packs, packWord, packGrams }: RunLine): string {
  return `${productName}: ${describePacks(packs, packWord, packGrams)}`;
}

/** A need that no trip serves, with the reason and what would help. */
export function describeUnmet({ name, day, grams, why }: Unmet): string {
  const what = `${describeGrams(grams)} of ${name} for ${mediumDay(day)}`;
  switch (why) {
    case "sold-nowhere":
      return `${what}: no shop on your list sells it. Say where it is sold, or swap it.`;
    case "no-trip-before":
      return `${what}: there is no shopping day before it. Add one, or swap it.`;
    case "would-not-keep":
      return `${what}: bought on any shopping day before, it would not keep until then. Add a later day, or swap it.`;
  }
}

/** How good a plan is known to be, in one sentence. */
export function describeProof(
  { cost, bound, proven }: Pick<RunPlan, "cost" | "bound" | "proven">,
  money: Money,
): string {
  if (proven) return "No other plan costs less in money, trips and waste together.";
  const percent = cost > 0 ? Math.max(0.1, Math.ceil(((cost - bound) / cost) * 1000) / 10) : 0;
  return `Another plan could cost at most ${percent} % less (${money(cost - bound)}); the search stopped there.`;
}

/** A week's cost against its budget: "42.10 of 45.00, 2.90 to spare." */
export function describeWeekCost(
  { cents, budgetCents, overCents }: WeekCost,
  money: Money,
): string {
  if (budgetCents === null) return `${money(cents)}.`;
  const rest =
    overCents > 0 ? `${money(overCents)} over` : `${money(budgetCents - cents)} to spare`;
  return `${money(cents)} of ${money(budgetCents)}, ${rest}.`;
}
