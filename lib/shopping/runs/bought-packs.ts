import { dividedBy, fraction, numberOf } from "#lib/base/index.ts";
import { addDays, type Day, dayOfNumber } from "#lib/calendar/index.ts";
import type { ItemModel, RunModel } from "./compile.ts";
import { supplyId } from "./fixed-lines.ts";
import type { PathArc } from "./item-graph.ts";
import type { FixedLine, FixedReason, Offer, Trip } from "./problem.ts";

/** One purchase and what becomes of it. */
export type BoughtPacks = {
  readonly trip: Trip;
  readonly offer: Offer;
  readonly packs: number;
  readonly uses: readonly { readonly day: Day; readonly grams: number }[];
  readonly left: number;
  readonly leftUntil: Day | null;
  readonly fixed: FixedReason | null;
};

/** The packs a way through an item's graph buys, with the days they are used. */
export function packsOfPath(
  model: RunModel,
  item: ItemModel,
  states: readonly number[],
  arcs: readonly PathArc[],
): BoughtPacks[] {
  const gramsOf = (units: number): number =>
    numberOf(dividedBy(fraction(BigInt(units), 1n), item.unitsPerGram));
  return arcs.map(({ from, to, option, shares }) => {
    const [start, end] = [states[from] ?? 0, states[to] ?? 0];
    const uses = shares.map(({ need }) => {
      const before = Math.max(start, item.ends[need - 1] ?? 0);
      const units = Math.min(end, item.ends[need] ?? 0) - before;
      return { day: dayOfNumber(item.days[need] ?? 0), grams: gramsOf(units) };
    });
    const trip = model.trips[option.trip];
    const bought = dayOfNumber(trip?.day ?? 0);
    const { unopenedDays, openedDays } = item.item.lives;
    return {
      trip: { shopId: option.offer.shopId, day: bought },
      offer: option.offer,
      packs: option.packs,
      uses,
      left: gramsOf(option.size - (end - start)),
      leftUntil: earliest(after(bought, unopenedDays), after(uses[0]?.day ?? bought, openedDays)),
      fixed: null,
    };
  });
}

/** The packs of an item's fixed lines, with the days that stock-keeping uses them. */
export function packsOfFixedLines(item: ItemModel, lines: readonly FixedLine[]): BoughtPacks[] {
  const { uses, left } = item.allocation;
  return lines
    .filter((line) => line.itemId === item.item.id)
    .flatMap((line) =>
      Array.from({ length: line.packs }, (_, index): BoughtPacks => {
        const id = supplyId(line, index);
        const rest = left.find((supply) => supply.id === id);
        return {
          trip: { shopId: line.shopId, day: line.day },
          offer: line,
          packs: 1,
          uses: uses
            .filter((use) => use.supplyId === id)
            .map((use) => ({ day: use.day, grams: numberOf(use.grams) })),
          left: rest ? numberOf(rest.grams) : 0,
          leftUntil: rest?.until ?? null,
          fixed: line.why,
        };
      }),
    );
}

/** The earlier of two days, where null is never. */
export function earliest(left: Day | null, right: Day | null): Day | null {
  if (left === null || right === null) return left ?? right;
  return left < right ? left : right;
}

function after(from: Day, days: number | null): Day | null {
  return days === null ? null : addDays(from, days);
}
