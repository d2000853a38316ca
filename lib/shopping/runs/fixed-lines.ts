import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Supply } from "../allocate.ts";
import type { FixedLine, RunItem, RunProblem } from "./problem.ts";

/** The packs that fixed lines bring in for an item, one supply per pack. */
export function fixedSupplies(problem: RunProblem, item: RunItem): Supply[] {
  return problem.overrides.lines
    .filter((line) => line.itemId === item.id)
    .flatMap((line) =>
      Array.from({ length: line.packs }, (_, index): Supply => ({
        id: supplyId(line, index),
        grams: line.packGrams,
        from: addDays(line.day, problem.leadDays),
        until: lastDayAfter(line.day, item.lives.unopenedDays),
        openedDays: item.lives.openedDays,
        isOpen: false,
      })),
    );
}

/** Names one pack of a fixed line. */
export function supplyId(line: FixedLine, index: number): string {
  return `${lineId(line.itemId, line.productId, line.shopId, line.day)} #${index}`;
}

/** The id of a line: what makes it the same line in the next plan. */
export function lineId(itemId: string, productId: string, shopId: string, day: Day): string {
  return [day, shopId, itemId, productId].join("|");
}

function lastDayAfter(from: Day, days: number | null): Day | null {
  return days === null ? null : addDays(from, days);
}
