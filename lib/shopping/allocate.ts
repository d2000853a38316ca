import { compareFractions, type Fraction, fractionOf, minus, plus, ZERO } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { lastDayOf, livesOf, type Lot } from "./shelf.ts";

/** Grams as purchased that are taken on one day. */
export type DayNeed = { readonly day: Day; readonly grams: Fraction };

/** Food that is there already or is certain to be bought: one lot or one pack. */
export type Supply = {
  readonly id: string;
  readonly grams: Fraction;
  /** First and last day it may be used; null: no limit. */
  readonly from: Day | null;
  readonly until: Day | null;
  /** Days it keeps once opened; null: opening changes nothing. */
  readonly openedDays: number | null;
  readonly isOpen: boolean;
};

/** A part of a supply taken on a day. */
export type SupplyUse = {
  readonly supplyId: string;
  readonly day: Day;
  readonly grams: Fraction;
};

/** How supplies serve needs. */
export type Allocation = {
  readonly uses: readonly SupplyUse[];
  /** What has to be bought; days that are covered are left out. */
  readonly net: readonly DayNeed[];
  /** What remains of each supply, with its last day as it stands then. */
  readonly left: readonly Supply[];
};

/**
 * Serves needs, day by day, from what is there: soonest last day first, opened before closed. So
 * nothing is bought that stock covers, and what ends soonest is used first. Opening a supply can
 * shorten its life, and what is past its last day serves nothing.
 */
export function allocate(needs: readonly DayNeed[], supplies: readonly Supply[]): Allocation {
  const left = new Map(supplies.map((supply) => [supply.id, supply]));
  const uses: SupplyUse[] = [];
  const net: DayNeed[] = [];
  for (const { day, grams } of needsByDay(needs)) {
    let missing = grams;
    const usable = [...left.values()].filter((supply) => isUsable(supply, day)).sort(compare);
    for (const supply of usable) {
      if (missing.top === 0n) break;
      const taken = compareFractions(supply.grams, missing) < 0 ? supply.grams : missing;
      uses.push({ supplyId: supply.id, day, grams: taken });
      left.set(supply.id, opened({ ...supply, grams: minus(supply.grams, taken) }, day));
      missing = minus(missing, taken);
    }
    if (missing.top > 0n) net.push({ day, grams: missing });
  }
  return { uses, net, left: [...left.values()].filter((supply) => supply.grams.top > 0n) };
}

/** Needs added up by day, earliest first; days that need nothing are left out. */
function needsByDay(needs: readonly DayNeed[]): DayNeed[] {
  const byDay = new Map<Day, Fraction>();
  for (const { day, grams } of needs) byDay.set(day, plus(byDay.get(day) ?? ZERO, grams));
  return [...byDay]
    .filter(([, grams]) => grams.top > 0n)
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([day, grams]) => ({ day, grams }));
}

/** A lot on hand as a supply; frozen lots serve too, thawing is a step of the prep. */
export function supplyOfLot(lot: Lot, shelf: Food["shelf"], isOnePiece = false): Supply {
  return {
    id: lot.id,
    grams: fractionOf(lot.grams),
    from: null,
    until: lastDayOf(lot, shelf),
    openedDays: lot.openedOn === null ? livesOf(shelf, lot.place, isOnePiece).openedDays : null,
    isOpen: lot.openedOn !== null,
  };
}

function isUsable({ from, until, grams }: Supply, day: Day): boolean {
  return grams.top > 0n && (from === null || from <= day) && (until === null || day <= until);
}

function opened(supply: Supply, on: Day): Supply {
  if (supply.isOpen) return supply;
  const ends = supply.openedDays === null ? null : addDays(on, supply.openedDays);
  const isSooner = ends !== null && (supply.until === null || ends < supply.until);
  return { ...supply, isOpen: true, until: isSooner ? ends : supply.until };
}

function compare(left: Supply, right: Supply): number {
  const [one, other] = [left.until ?? "9999", right.until ?? "9999"];
  if (one !== other) return one < other ? -1 : 1;
  if (left.isOpen !== right.isOpen) return left.isOpen ? -1 : 1;
  return left.id < right.id ? -1 : 1;
}
