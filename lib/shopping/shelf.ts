import { isPresent } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";

export const PLACES = ["pantry", "fridge", "freezer"] as const;
/** Where a food is kept. */
export type Place = (typeof PLACES)[number];

/** A lot on hand, or one whose purchase is certain. */
export type Lot = {
  readonly id: string;
  readonly foodId: string;
  readonly productId: string | null;
  /** As purchased, what is left of it. */
  readonly grams: number;
  readonly boughtOn: Day | null;
  readonly openedOn: Day | null;
  readonly cutOn: Day | null;
  /** Cooked or mixed on this day. */
  readonly preparedOn: Day | null;
  /** The date on the label. */
  readonly useBy: Day | null;
  readonly place: Place;
};

type Shelf = Food["shelf"];

/** Days that a pack keeps: from the day it is bought, and from the day it is opened or cut. */
export type Lives = { readonly unopenedDays: number | null; readonly openedDays: number | null };

/**
 * Lives of a food at a place, in days; null where no source states one. `isOnePiece` says that the
 * pack is a single piece that is cut when first used (a melon): then the life after cutting counts.
 */
export function livesOf(shelf: Shelf, place: Place, isOnePiece = false): Lives {
  const cutDays = isOnePiece ? shelf.cutDays : null;
  switch (place) {
    case "pantry":
      return {
        unopenedDays: shelf.pantryDays,
        openedDays: shortest(shelf.pantryOpenedDays ?? shelf.fridgeOpenedDays, cutDays),
      };
    case "fridge":
      return {
        unopenedDays: shelf.fridgeDays,
        openedDays: shortest(shelf.fridgeOpenedDays, cutDays),
      };
    case "freezer":
      return { unopenedDays: shelf.freezerDays, openedDays: null };
  }
}

/** Where a food is kept once bought: the refrigerator when a life is stated for it, else the pantry. */
export function usualPlace(shelf: Shelf): Place {
  return shelf.fridgeDays === null && shelf.pantryDays !== null ? "pantry" : "fridge";
}

/**
 * The last day a lot may be used, or null when neither the label nor a source limits it. The label's
 * use-by stands in for the reference life of an unopened pack; a pack that was opened, cut or cooked
 * also ends with that shorter life, for a label speaks of the closed pack (USDA FoodKeeper states
 * opened lives beside it). The earliest of these days counts.
 */
export function lastDayOf(lot: Lot, shelf: Shelf): Day | null {
  const { unopenedDays, openedDays } = livesOf(shelf, lot.place);
  const closed = lot.useBy ?? after(lot.boughtOn, unopenedDays);
  const days = [
    closed,
    after(lot.openedOn, openedDays),
    after(lot.cutOn, shelf.cutDays),
    after(lot.preparedOn, shelf.preparedDays),
  ].filter(isPresent);
  return days.length === 0 ? null : days.reduce((first, next) => (next < first ? next : first));
}

function after(from: Day | null, days: number | null): Day | null {
  return from === null || days === null ? null : addDays(from, days);
}

function shortest(left: number | null, right: number | null): number | null {
  if (left === null || right === null) return left ?? right;
  return Math.min(left, right);
}
