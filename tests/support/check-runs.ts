import { numberOf } from "#lib/base/index.ts";
import { daysBetween } from "#lib/calendar/index.ts";
import type { RunItem, RunLine, RunPlan, RunProblem } from "#lib/shopping/index.ts";

const TOLERANCE = 1e-6;

/**
 * What is wrong with a plan, by rules written out anew and not taken from the planner: too little
 * bought, used past a life or before it is there, more used than bought, a shop that was not open.
 */
export function faultsOf(problem: RunProblem, plan: RunPlan): string[] {
  const lines = plan.runs.flatMap((run) => run.lines);
  return [
    ...problem.items.flatMap((item) => needFaults(item, plan, lines)),
    ...problem.items.flatMap((item) => stockFaults(item, plan)),
    ...problem.items.flatMap((item) =>
      lines
        .filter((line) => line.itemId === item.id)
        .flatMap((line) => lineFaults(problem, item, line)),
    ),
  ];
}

function needFaults(item: RunItem, plan: RunPlan, lines: readonly RunLine[]): string[] {
  return [...new Set(item.needs.map((need) => need.day))].flatMap((day) => {
    const wanted = sum(item.needs.filter((need) => need.day === day).map((n) => numberOf(n.grams)));
    const own = lines.filter((line) => line.itemId === item.id);
    const served = sum([
      ...own.flatMap((line) => line.uses.filter((use) => use.day === day).map((use) => use.grams)),
      ...[...plan.fromStock, ...plan.unmet]
        .filter((part) => part.itemId === item.id && part.day === day)
        .map((part) => part.grams),
    ]);
    return Math.abs(served - wanted) <= TOLERANCE * (1 + wanted)
      ? []
      : [`${item.id} on ${day}: ${served} g for ${wanted} g`];
  });
}

function stockFaults(item: RunItem, plan: RunPlan): string[] {
  return item.supplies.flatMap((supply) => {
    const uses = plan.fromStock.filter((use) => use.lotId === supply.id);
    const used = sum(uses.map((use) => use.grams));
    const isLate = uses.some((use) => supply.until !== null && use.day > supply.until);
    return [
      ...(used > numberOf(supply.grams) + TOLERANCE
        ? [`${supply.id}: more used than there is`]
        : []),
      ...(isLate ? [`${supply.id}: used past its last day`] : []),
    ];
  });
}

function lineFaults(problem: RunProblem, item: RunItem, line: RunLine): string[] {
  const faults: string[] = [];
  const isOpen = problem.trips.some((trip) => trip.shopId === line.shopId && trip.day === line.day);
  if (!isOpen && !line.fixed) faults.push(`${line.id}: no such trip`);
  for (const { day } of line.uses) {
    const age = daysBetween(line.day, day);
    if (age < problem.leadDays) faults.push(`${line.id}: used on ${day}, before it is there`);
    if (age > (item.lives.unopenedDays ?? Infinity)) faults.push(`${line.id}: past its life`);
  }
  if (packsOpened(item, line) > line.packs) faults.push(`${line.id}: more packs used than bought`);
  const used = sum(line.uses.map((use) => use.grams));
  if (Math.abs(used + line.leftGrams - line.packs * line.packGrams) > TOLERANCE * (1 + used)) {
    faults.push(`${line.id}: used and left are not what was bought`);
  }
  return faults;
}

/** Packs it takes to serve a line's uses in order, none used past its opened life. */
function packsOpened(item: RunItem, line: RunLine): number {
  let [packs, left, openedOn] = [0, 0, line.day];
  for (const { day, grams } of [...line.uses].sort((a, b) => (a.day < b.day ? -1 : 1))) {
    let missing = grams;
    while (missing > TOLERANCE) {
      const isOver = daysBetween(openedOn, day) > (item.lives.openedDays ?? Infinity);
      if (left <= TOLERANCE || isOver) [packs, left, openedOn] = [packs + 1, line.packGrams, day];
      const taken = Math.min(left, missing);
      [left, missing] = [left - taken, missing - taken];
    }
  }
  return packs;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, next) => total + next, 0);
}
