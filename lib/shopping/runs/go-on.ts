import type { Ticks } from "../ticks.ts";
import type { FixedLine, Offer, RunPlan, RunProblem, Trip } from "./problem.ts";

/** Ticked lines as fixed ones: bought stays bought, with the packs that were really taken. */
export function boughtLines(problem: RunProblem, plan: RunPlan, ticks: Ticks): FixedLine[] {
  return plan.runs
    .flatMap((run) => run.lines)
    .flatMap((line) => {
      const tick = ticks.get(line.id);
      const item = problem.items.find((candidate) => candidate.id === line.itemId);
      const offer = item?.offers.find((candidate) => isSameOffer(candidate, line));
      if (tick?.state !== "bought" || !item || !offer || tick.packs < 1) return [];
      const { day, itemId } = line;
      return [{ ...offer, day, itemId, packs: tick.packs, why: "bought" as const }];
    });
}

/**
 * The problem as it stands at a shop: what is ticked as bought stays, what the shop had none of is not
 * sought there again, the trip on foot is made, and days that are over are no longer offered. Hand it
 * to `replanRuns` or, to see the cheapest way on, to `planRuns`.
 */
export function problemFrom(
  problem: RunProblem,
  plan: RunPlan,
  ticks: Ticks,
  here: Trip,
): RunProblem {
  const bought = boughtLines(problem, plan, ticks);
  const isOver = (trip: Trip): boolean => trip.day < here.day;
  const noneLeft = plan.runs
    .flatMap((run) => run.lines)
    .filter((line) => ticks.get(line.id)?.state === "none-left")
    .map(({ productId, shopId, day }) => ({ productId, shopId, from: day }));
  const { overrides } = problem;
  return {
    ...problem,
    trips: problem.trips.filter((trip) => !isOver(trip)),
    overrides: {
      ...overrides,
      goTo: [...overrides.goTo.filter((trip) => !isOver(trip)), here],
      lines: [
        ...overrides.lines.filter((line) => !isTicked(line, bought) && !isOver(line)),
        ...bought,
      ],
      noneLeft: [...overrides.noneLeft, ...noneLeft],
    },
  };
}

function isTicked(line: FixedLine, bought: readonly FixedLine[]): boolean {
  return bought.some(
    (tick) =>
      tick.itemId === line.itemId &&
      tick.productId === line.productId &&
      tick.shopId === line.shopId &&
      tick.day === line.day,
  );
}

function isSameOffer(offer: Offer, line: { productId: string; shopId: string }): boolean {
  return offer.productId === line.productId && offer.shopId === line.shopId;
}
