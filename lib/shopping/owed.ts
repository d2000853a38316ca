import { ok, refuse, type Result } from "#lib/base/index.ts";
import { daysBetween, type Day } from "#lib/calendar/index.ts";

export const SETTLINGS = ["used", "frozen", "let-go"] as const;
/** How an owed food was settled. */
export type Settling = (typeof SETTLINGS)[number];

/** Food that was bought for a lunch and not used, owed until it is settled. */
export type OwedFood = {
  readonly id: string;
  readonly foodId: string;
  readonly foodName: string;
  /** As purchased. */
  readonly grams: number;
  readonly since: Day;
  readonly useBy: Day | null;
  readonly settled: { readonly on: Day; readonly how: Settling } | null;
};

/** Why an owed food cannot be settled so. */
export type SettleProblem =
  | { readonly kind: "already-settled"; readonly on: Day; readonly how: Settling }
  | { readonly kind: "past-its-use-by"; readonly useBy: Day };

/**
 * An owed food settled on a day. Refuses to use or freeze it after its use-by: then it can only be
 * let go. Refuses a second settling.
 */
export function settleOwed(
  owed: OwedFood,
  how: Settling,
  on: Day,
): Result<OwedFood, SettleProblem> {
  if (owed.settled) return refuse({ kind: "already-settled", ...owed.settled });
  if (how !== "let-go" && owed.useBy !== null && owed.useBy < on) {
    return refuse({ kind: "past-its-use-by", useBy: owed.useBy });
  }
  return ok({ ...owed, settled: { on, how } });
}

/** An owed food that is still open, and the days until its use-by (negative: over; null: none). */
export type OpenOwed = { readonly owed: OwedFood; readonly daysLeft: number | null };

/** What is still owed, with the days left from `today`, soonest use-by first. */
export function stillOwed(owed: readonly OwedFood[], today: Day): OpenOwed[] {
  return owed
    .filter((food) => food.settled === null)
    .map((food) => ({
      owed: food,
      daysLeft: food.useBy === null ? null : daysBetween(today, food.useBy),
    }))
    .sort(
      (left, right) =>
        (left.daysLeft ?? Infinity) - (right.daysLeft ?? Infinity) ||
        (left.owed.id < right.owed.id ? -1 : 1),
    );
}
