import { numberOf } from "#lib/base/index.ts";
import { daysBetween, type Day } from "#lib/calendar/index.ts";
import type { Offer, RunItem, RunProblem } from "#lib/shopping/index.ts";

type Wanted = readonly (readonly [Day, number])[];
type Pack = { readonly boughtOn: Day; readonly offer: Offer };

/**
 * The least cost of a problem without stock, overrides or unmet needs, by trying every set of trips and,
 * for each item, every sequence of packs. For a handful of trips only.
 */
export function leastCostByTrying(problem: RunProblem): number {
  const { trips, items } = problem;
  let best = Infinity;
  for (let set = 0; set < 2 ** trips.length; set += 1) {
    const made = trips.filter((_, index) => (set >> index) % 2 === 1);
    let cost = made.reduce((sum, trip) => sum + trip.cents, 0);
    for (const item of items) {
      const packs = item.offers.flatMap((offer) =>
        made.flatMap(({ shopId, day }) =>
          shopId === offer.shopId ? [{ boughtOn: day, offer }] : [],
        ),
      );
      if (cost < best) cost += leastForItem(problem, item, packs);
    }
    best = Math.min(best, cost);
  }
  return best;
}

function leastForItem(problem: RunProblem, item: RunItem, packs: readonly Pack[]): number {
  const wanted = new Map<Day, number>();
  for (const { day, grams } of item.needs) {
    wanted.set(day, (wanted.get(day) ?? 0) + numberOf(grams));
  }
  const days = [...wanted].sort(([left], [right]) => (left < right ? -1 : 1));
  const total = days.reduce((sum, [, grams]) => sum + grams, 0);
  return cheapest(problem, item, packs, days, new Map()) - item.wasteCentsPerGram * total;
}

/** Opens each pack in turn for what is still wanted and goes on with the rest. */
function cheapest(
  problem: RunProblem,
  item: RunItem,
  packs: readonly Pack[],
  wanted: Wanted,
  known: Map<string, number>,
): number {
  const [first] = wanted;
  if (!first) return 0;
  const key = wanted.join(" ");
  const before = known.get(key);
  if (before !== undefined) return before;
  let best = Infinity;
  for (const pack of packs) {
    const age = daysBetween(pack.boughtOn, first[0]);
    if (age < problem.leadDays || age > (item.lives.unopenedDays ?? Infinity)) continue;
    const { offer } = pack;
    const cents = offer.priceCents + item.wasteCentsPerGram * numberOf(offer.packGrams);
    const rest = stillWanted(item, pack, wanted);
    best = Math.min(best, cents + cheapest(problem, item, packs, rest, known));
  }
  known.set(key, best);
  return best;
}

/** What is still wanted once a pack, opened on the first day, has given what it can. */
function stillWanted(item: RunItem, { boughtOn, offer }: Pack, wanted: Wanted): Wanted {
  const openedOn = wanted[0]?.[0] ?? boughtOn;
  let left = numberOf(offer.packGrams);
  return wanted.flatMap(([day, grams]) => {
    const isGood =
      daysBetween(boughtOn, day) <= (item.lives.unopenedDays ?? Infinity) &&
      daysBetween(openedOn, day) <= (item.lives.openedDays ?? Infinity);
    const taken = isGood ? Math.min(left, grams) : 0;
    left -= taken;
    return grams > taken ? [[day, grams - taken] as const] : [];
  });
}
