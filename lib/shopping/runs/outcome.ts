import { groupBy, numberOf } from "#lib/base/index.ts";
import { dayNumber } from "#lib/calendar/index.ts";
import { type BoughtPacks, earliest, packsOfFixedLines, packsOfPath } from "./bought-packs.ts";
import type { ItemModel, RunModel } from "./compile.ts";
import { lineId } from "./fixed-lines.ts";
import { SAME_CENTS } from "./improve.ts";
import type { Run, RunLine, RunPlan, StockUse, Trip } from "./problem.ts";
import type { SearchOutcome } from "./search.ts";
import type { Tally } from "./tally.ts";

/** Turns the trips found and the items' cheapest ways into runs with lines, uses and leftovers. */
export function planOf(tally: Tally, found: SearchOutcome): RunPlan {
  const { model, graphs } = tally;
  const { overrides } = model.problem;
  const paths = tally.pathsOf(found.trips);
  const bought = model.items.map((item, index) => [
    ...packsOfFixedLines(item, overrides.lines),
    ...packsOfPath(model, item, graphs[index]?.states ?? [], paths[index]?.arcs ?? []),
  ]);
  const lines = model.items.flatMap((item, index) => linesOf(item, bought[index] ?? []));
  const runs = runsOf(lines, overrides.goTo);
  const goodsCents = sum(lines, (line) => line.packs * line.priceCents);
  const wasteCents = sum(model.items, (item, index) => wasteOf(item, bought[index] ?? []));
  const tripCents = sum(runs, (run) => centsOf(model, run));
  const cost = goodsCents + tripCents + wasteCents;
  const fixedCents = sum(model.items, (item, index) => fixedOf(item, bought[index] ?? []));
  const least = found.proven ? cost : Math.min(cost, found.bound + fixedCents);
  // A trip that the search made and no line needs is not in the plan, which may close the gap.
  const proven = least >= cost - SAME_CENTS;
  return {
    runs,
    fromStock: model.items.flatMap(stockUses),
    unmet: model.unmet,
    goodsCents,
    tripCents,
    wasteCents,
    cost,
    bound: proven ? cost : least,
    proven,
    steps: tally.steps.count,
  };
}

function linesOf({ item }: ItemModel, bought: readonly BoughtPacks[]): RunLine[] {
  const byLine = groupBy(bought, ({ trip, offer }) =>
    lineId(item.id, offer.productId, trip.shopId, trip.day),
  );
  return [...byLine].flatMap(([id, packs]) => {
    const [first] = packs;
    return first ? [lineOf(id, item, first, packs)] : [];
  });
}

function lineOf(
  id: string,
  item: ItemModel["item"],
  first: BoughtPacks,
  packs: readonly BoughtPacks[],
): RunLine {
  const uses = groupBy(
    packs.flatMap((pack) => pack.uses),
    (use) => use.day,
  );
  return {
    id,
    ...first.trip,
    itemId: item.id,
    name: item.name,
    productId: first.offer.productId,
    productName: first.offer.name,
    packs: sum(packs, (pack) => pack.packs),
    packWord: first.offer.packWord,
    packGrams: numberOf(first.offer.packGrams),
    priceCents: first.offer.priceCents,
    uses: [...uses].map(([day, parts]) => ({ day, grams: sum(parts, (part) => part.grams) })),
    leftGrams: sum(packs, (pack) => pack.left),
    leftUntil: packs
      .filter((pack) => pack.left > 0)
      .reduce<RunLine["leftUntil"]>((soonest, pack) => earliest(soonest, pack.leftUntil), null),
    fixed: packs.find((pack) => pack.fixed)?.fixed ?? null,
  };
}

/** Runs in the order of days and shops, also those without lines that are made in any case. */
function runsOf(lines: readonly RunLine[], goTo: readonly Trip[]): Run[] {
  const key = ({ day, shopId }: Trip): string => `${day} ${shopId}`;
  const byTrip = groupBy(lines, key);
  const trips = new Map([...goTo, ...lines].map((trip) => [key(trip), trip]));
  return [...trips]
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([id, { shopId, day }]) => ({ shopId, day, lines: byTrip.get(id) ?? [] }));
}

function centsOf({ trips }: RunModel, { shopId, day }: Run): number {
  return trips.find((trip) => trip.shopId === shopId && trip.day === dayNumber(day))?.cents ?? 0;
}

function wasteOf({ item }: ItemModel, bought: readonly BoughtPacks[]): number {
  return item.wasteCentsPerGram * sum(bought, (packs) => packs.left);
}

/** Cents that were settled before the search: fixed lines and what they leave. */
function fixedOf(item: ItemModel, bought: readonly BoughtPacks[]): number {
  const fixed = bought.filter((packs) => packs.fixed);
  return sum(fixed, (packs) => packs.packs * packs.offer.priceCents) + wasteOf(item, fixed);
}

function stockUses({ item, allocation }: ItemModel): StockUse[] {
  const lots = new Set(item.supplies.map((supply) => supply.id));
  return allocation.uses
    .filter((use) => lots.has(use.supplyId))
    .map(({ supplyId, day, grams }) => ({
      itemId: item.id,
      lotId: supplyId,
      day,
      grams: numberOf(grams),
    }));
}

function sum<Item>(items: readonly Item[], of: (item: Item, index: number) => number): number {
  return items.reduce((total, item, index) => total + of(item, index), 0);
}
