import {
  ceilingOf,
  compareFractions,
  type Fraction,
  fraction,
  fractionOf,
  leastCommonMultiple,
  plus,
  numberOf,
  times,
  ZERO,
} from "#lib/base/index.ts";
import { dayNumber } from "#lib/calendar/index.ts";
import { type Allocation, allocate, type DayNeed, type Supply } from "../allocate.ts";
import { fixedSupplies } from "./fixed-lines.ts";
import type { Offer, RunItem, RunProblem, Unmet } from "./problem.ts";

/** A way to get a pack of an item: an offer on a trip, and the needs it is in time for. */
export type Option = {
  readonly trip: number;
  readonly offer: Offer;
  /** Units of the item in one purchase; see `ItemModel.unitsPerGram`. */
  readonly size: number;
  /** Packs in one purchase: 1, unless packs are tiny against the need. */
  readonly packs: number;
  /** Price plus the waste weight of a whole purchase. */
  readonly cents: number;
  readonly firstNeed: number;
  readonly lastNeed: number;
};

/** One item in whole units, net of stock and of fixed lines. */
export type ItemModel = {
  readonly item: RunItem;
  readonly allocation: Allocation;
  /** Day numbers of the net needs, earliest first, and where each ends on the axis of units. */
  readonly days: readonly number[];
  readonly ends: readonly number[];
  readonly unitsPerGram: Fraction;
  readonly options: readonly Option[];
  /** The waste weight of all that is used, taken off the options' cents once. */
  readonly usedCents: number;
};

/** A problem ready to be searched. */
export type RunModel = {
  readonly problem: RunProblem;
  /** Trips that may be made; `cents` is zero for those made in any case. */
  readonly trips: readonly {
    readonly shopId: string;
    readonly day: number;
    readonly cents: number;
  }[];
  readonly items: readonly ItemModel[];
  readonly unmet: readonly Unmet[];
};

/** More purchases than this of one item in a plan are bundled. */
const PURCHASES_MAX = 400;

/** Applies overrides and stock, sets needs aside that no trip can serve, and turns grams to units. */
export function compileRuns(problem: RunProblem): RunModel {
  const trips = openTrips(problem);
  const unmet: Unmet[] = [];
  const items = problem.items.map((item) => {
    const supplies: Supply[] = [...item.supplies, ...fixedSupplies(problem, item)];
    const allocation = allocate(item.needs, supplies);
    const candidates = candidatesOf(problem, trips, item);
    const served = allocation.net.filter((need) => {
      const why = whyUnmet(problem, item, candidates, need);
      if (why) unmet.push({ itemId: item.id, name: item.name, ...inNumbers(need), why });
      return !why;
    });
    return itemModel(problem, item, allocation, served, candidates);
  });
  return { problem, trips, items, unmet };
}

type Candidate = { readonly trip: number; readonly day: number; readonly offer: Offer };

function openTrips({ trips, overrides }: RunProblem): RunModel["trips"] {
  const isMade = (shopId: string, day: string): boolean =>
    [...overrides.goTo, ...overrides.lines].some(
      (made) => made.shopId === shopId && made.day === day,
    );
  const isBanned = (shopId: string, day: string): boolean =>
    overrides.notTo.some((ban) => (ban.shopId ?? shopId) === shopId && (ban.day ?? day) === day);
  const wanted = new Map(trips.map((trip) => [`${trip.day} ${trip.shopId}`, trip]));
  for (const made of overrides.goTo) {
    wanted.set(`${made.day} ${made.shopId}`, { ...made, cents: 0 });
  }
  return [...wanted]
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([, trip]) => trip)
    .filter(({ shopId, day }) => isMade(shopId, day) || !isBanned(shopId, day))
    .map(({ shopId, day, cents }) => ({
      shopId,
      day: dayNumber(day),
      cents: isMade(shopId, day) ? 0 : cents,
    }));
}

function candidatesOf(
  { overrides }: RunProblem,
  trips: RunModel["trips"],
  item: RunItem,
): Candidate[] {
  const onlyAt = overrides.onlyAt.filter((only) => only.itemId === item.id);
  return trips.flatMap(({ shopId, day }, trip) =>
    item.offers
      .filter((offer) => offer.shopId === shopId)
      .filter(() => onlyAt.length === 0 || onlyAt.some((only) => only.shopId === shopId))
      .filter(
        (offer) =>
          !overrides.noneLeft.some(
            (none) =>
              none.productId === offer.productId &&
              none.shopId === shopId &&
              dayNumber(none.from) <= day,
          ),
      )
      .map((offer) => ({ trip, day, offer })),
  );
}

function whyUnmet(
  { leadDays }: RunProblem,
  { lives }: RunItem,
  candidates: readonly Candidate[],
  need: DayNeed,
): Unmet["why"] | undefined {
  const day = dayNumber(need.day);
  if (candidates.length === 0) return "sold-nowhere";
  const before = candidates.filter((candidate) => candidate.day + leadDays <= day);
  if (before.length === 0) return "no-trip-before";
  const life = lives.unopenedDays ?? Infinity;
  return before.some((candidate) => day <= candidate.day + life) ? undefined : "would-not-keep";
}

function itemModel(
  problem: RunProblem,
  item: RunItem,
  allocation: Allocation,
  served: readonly DayNeed[],
  candidates: readonly Candidate[],
): ItemModel {
  const sums: Fraction[] = [];
  for (const { grams } of served) sums.push(plus(sums.at(-1) ?? ZERO, grams));
  const unitsPerGram = scaleOf([...sums, ...item.offers.map((offer) => offer.packGrams)]);
  const ends = sums.map((sum) => Number(ceilingOf(times(sum, unitsPerGram))));
  const days = served.map((need) => dayNumber(need.day));
  const total = ends.at(-1) ?? 0;
  const life = item.lives.unopenedDays ?? Infinity;
  const options = candidates.flatMap(({ trip, day, offer }): Option[] => {
    const firstNeed = days.findIndex((need) => day + problem.leadDays <= need);
    const lastNeed = days.findLastIndex((need) => need <= day + life);
    if (firstNeed < 0 || lastNeed < firstNeed) return [];
    const packUnits = floorOf(times(offer.packGrams, unitsPerGram));
    const packs = Math.max(1, Math.ceil(total / (packUnits * PURCHASES_MAX)));
    const wasteCents = item.wasteCentsPerGram * numberOf(offer.packGrams);
    const cents = packs * (offer.priceCents + wasteCents);
    return [{ trip, offer, size: packs * packUnits, packs, cents, firstNeed, lastNeed }];
  });
  const usedCents = item.wasteCentsPerGram * numberOf(sums.at(-1) ?? ZERO);
  return { item, allocation, days, ends, unitsPerGram, options, usedCents };
}

/**
 * Units per gram that make all amounts whole. Where none is small enough for exact doubles, a
 * nanogram: then needs round up and packs down, which can buy a pack too many and never one too few.
 */
function scaleOf(amounts: readonly Fraction[]): Fraction {
  const scale = fraction(leastCommonMultiple(amounts.map((amount) => amount.bottom)), 1n);
  const largest = amounts.reduce(
    (max, next) => (compareFractions(next, max) > 0 ? next : max),
    ZERO,
  );
  const isExact = numberOf(times(scale, largest)) * PURCHASES_MAX < Number.MAX_SAFE_INTEGER;
  return isExact ? scale : fractionOf(1e9);
}

function floorOf({ top, bottom }: Fraction): number {
  return Number(top / bottom);
}

function inNumbers({ day, grams }: DayNeed): Pick<Unmet, "day" | "grams"> {
  return { day, grams: numberOf(grams) };
}
