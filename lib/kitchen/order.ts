import { demandsOf, type KitchenStep } from "./step.ts";

/** A step that has its place: when, in whose hands, on which of the appliances. */
export type Placed = {
  readonly step: KitchenStep;
  readonly start: number;
  readonly end: number;
  /** Cook 0, 1 …; null when it runs by itself. */
  readonly cook: number | null;
  /** Which of several: oven 0, hob 0 or 1 …; null when it needs none. */
  readonly unit: number | null;
  /** Minutes it may begin later without moving what the plan ends with. */
  readonly slack: number;
  /** On the critical chain: a minute's delay here is a minute's delay of the whole. */
  readonly isCritical: boolean;
};

/** The earliest and latest a step may begin for reasons of its own: windows, holds. */
export type Limits = { readonly from: number; readonly to: number };

type Lane = { readonly resource: string; readonly lane: number };

/**
 * Gives each step a cook and an appliance, keeps that order, and moves every step to the earliest
 * minute that the order and its own limits leave; what is left until its latest minute is its slack
 * (critical path method, Kelley & Walker 1959, from memory). Any schedule that keeps the order of each
 * cook and appliance keeps the capacities, so nothing needs solving anew. `endOf` is the minute
 * by which a step must be over for the whole not to end later.
 */
export function putInOrder(
  steps: readonly KitchenStep[],
  starts: ReadonlyMap<string, number>,
  limitsOf: (step: KitchenStep) => Limits,
  endOf: (step: KitchenStep) => number,
): Placed[] {
  const startOf = (step: KitchenStep): number => starts.get(step.id) ?? 0;
  const sorted = [...steps].sort(
    (a, b) => startOf(a) - startOf(b) || startOf(a) + a.minutes - startOf(b) - b.minutes,
  );
  const { lanes, arcs } = assignLanes(sorted, startOf);
  const indices = new Map(sorted.map(({ id }, index) => [id, index]));
  sorted.forEach((step, index) => {
    for (const id of step.after) {
      const before = indices.get(id);
      if (before !== undefined) arcs.push([before, index]);
    }
  });
  const earliest = forwards(sorted, arcs, limitsOf);
  const latest = backwards(sorted, arcs, (step) => limitsOf(step).to);
  const latestForEnd = backwards(sorted, arcs, (step) =>
    Math.min(limitsOf(step).to, endOf(step) - step.minutes),
  );
  const placed = sorted.map((step, index) => {
    const start = earliest[index] ?? 0;
    const held = lanes.get(step.id) ?? [];
    return {
      ...{ step, start, end: start + step.minutes },
      cook: held.find(({ resource }) => resource === "cook")?.lane ?? null,
      unit: held.find(({ resource }) => resource !== "cook")?.lane ?? null,
      slack: (latest[index] ?? start) - start,
      isCritical: latestForEnd[index] === start,
    };
  });
  return placed.sort((a, b) => a.start - b.start || a.end - b.end);
}

/** Each resource's units as lanes, filled in order of start; a cook stays with a food where possible. */
function assignLanes(sorted: readonly KitchenStep[], startOf: (step: KitchenStep) => number) {
  const lanes = new Map<string, Lane[]>();
  const arcs: [number, number][] = [];
  const lastOf = new Map<string, { readonly index: number; readonly end: number }[]>();
  sorted.forEach((step, index) => {
    const start = startOf(step);
    for (const resource of Object.keys(demandsOf(step))) {
      const units = lastOf.get(resource) ?? [];
      lastOf.set(resource, units);
      const free = units.flatMap(({ end }, lane) => (end <= start ? [lane] : []));
      const same = free.find((lane) => sorted[units[lane]?.index ?? -1]?.foodId === step.foodId);
      const lane = same ?? free[0] ?? units.length;
      const before = units[lane];
      if (before) arcs.push([before.index, index]);
      units[lane] = { index, end: start + step.minutes };
      lanes.set(step.id, [...(lanes.get(step.id) ?? []), { resource, lane }]);
    }
  });
  return { lanes, arcs };
}

/** Arcs lead from earlier to later in the list, but for steps of no length; so relax until still. */
function forwards(
  sorted: readonly KitchenStep[],
  arcs: readonly (readonly [number, number])[],
  limitsOf: (step: KitchenStep) => Limits,
): number[] {
  const times = sorted.map((step) => limitsOf(step).from);
  for (let hasMoved = true; hasMoved;) {
    hasMoved = false;
    for (const [before, after] of arcs) {
      const ready = (times[before] ?? 0) + (sorted[before]?.minutes ?? 0);
      if ((times[after] ?? 0) >= ready) continue;
      times[after] = ready;
      hasMoved = true;
    }
  }
  return times;
}

function backwards(
  sorted: readonly KitchenStep[],
  arcs: readonly (readonly [number, number])[],
  latestOf: (step: KitchenStep) => number,
): number[] {
  const times = sorted.map(latestOf);
  for (let hasMoved = true; hasMoved;) {
    hasMoved = false;
    for (const [before, after] of arcs) {
      const due = (times[after] ?? 0) - (sorted[before]?.minutes ?? 0);
      if ((times[before] ?? 0) <= due) continue;
      times[before] = due;
      hasMoved = true;
    }
  }
  return times;
}
