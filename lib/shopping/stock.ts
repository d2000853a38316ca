import { ok, refuse, type Result } from "#lib/base/index.ts";
import { daysBetween, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { lastDayOf, type Lot } from "./shelf.ts";

/** Why a lot cannot be changed as asked. */
export type StockProblem =
  | { readonly kind: "not-that-much-left"; readonly grams: number; readonly left: number }
  | { readonly kind: "past-its-life"; readonly lastDay: Day }
  | { readonly kind: "freezing-not-advised" };

/** A lot used in part or whole on a day, opened by its first use. `null` when nothing is left. */
export function takeFromLot(lot: Lot, grams: number, on: Day): Result<Lot | null, StockProblem> {
  if (grams > lot.grams) return refuse({ kind: "not-that-much-left", grams, left: lot.grams });
  const left = lot.grams - grams;
  return ok(left === 0 ? null : { ...lot, grams: left, openedOn: lot.openedOn ?? on });
}

/** A lot opened on a day; a second opening changes nothing. */
export function openLot(lot: Lot, on: Day): Lot {
  return { ...lot, openedOn: lot.openedOn ?? on };
}

/**
 * A lot put into the freezer: its freezer life starts, the label's date for the closed pack ends.
 * Refuses past its last day, and where no source states a freezer life.
 */
export function freezeLot(lot: Lot, shelf: Food["shelf"], on: Day): Result<Lot, StockProblem> {
  const lastDay = lastDayOf(lot, shelf);
  if (lastDay !== null && lastDay < on) return refuse({ kind: "past-its-life", lastDay });
  if (shelf.freezerDays === null) return refuse({ kind: "freezing-not-advised" });
  const thawed = { openedOn: null, cutOn: null, preparedOn: null, useBy: null };
  return ok({ ...lot, ...thawed, place: "freezer", boughtOn: on });
}

/** A lot with the last day it may be used and how many days that is away. */
export type UseFirst = {
  readonly lot: Lot;
  readonly lastDay: Day | null;
  /** Negative when its last day is over; null when nothing limits it. */
  readonly daysLeft: number | null;
};

/** Lots in the order to use them: soonest last day, then opened before closed, then smallest. */
export function inOrderOfUse(
  lots: readonly Lot[],
  shelfOf: (foodId: string) => Food["shelf"],
  today: Day,
): UseFirst[] {
  return lots
    .map((lot) => {
      const lastDay = lastDayOf(lot, shelfOf(lot.foodId));
      return { lot, lastDay, daysLeft: lastDay === null ? null : daysBetween(today, lastDay) };
    })
    .sort((left, right) => compareLots(left.lot, left.lastDay, right.lot, right.lastDay));
}

/** Orders lots by the last day they may be used; see `inOrderOfUse`. */
function compareLots(left: Lot, leftEnds: Day | null, right: Lot, rightEnds: Day | null): number {
  const [one, other] = [leftEnds ?? "9999", rightEnds ?? "9999"];
  if (one !== other) return one < other ? -1 : 1;
  const opened = Number(left.openedOn === null) - Number(right.openedOn === null);
  if (opened !== 0) return opened;
  return left.grams - right.grams || (left.id < right.id ? -1 : left.id > right.id ? 1 : 0);
}
