import { schedule, type Precedence, type SchedulingProblem } from "#lib/prep/index.ts";
import { capacitiesOf, demandsOf, type Kitchen, type KitchenStep } from "./step.ts";

/** A morning: how long before the door its work begins, and when each step does. */
export type Morning = {
  /** Minutes from the first step to the departure. */
  readonly length: number;
  /** Proven: no order is shorter. */
  readonly bound: number;
  /** Minutes before the departure that each step begins. */
  readonly before: ReadonlyMap<string, number>;
  readonly looseHolds: readonly LooseHold[];
};

/** A hold limit that could not be kept, and by how many minutes it is passed. */
export type LooseHold = { readonly stepId: string; readonly extraMinutes: number };

type Extra = ReadonlyMap<string, number>;
const NO_EXTRA: Extra = new Map();

/** Steps of the search for each trial of longer holds: there are many, and most are settled at once. */
const PROBE_STEPS = 800;

/**
 * The shortest morning: time runs back from the departure, so that the packing comes first and the
 * least makespan is the latest time to get up. Where the hold limits leave no order at all, those that
 * must give way are loosened by as little as will do.
 */
export function planMorning(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  budget: number,
): Morning {
  const kept = solve(steps, kitchen, NO_EXTRA, budget);
  if (kept) return { ...kept, looseHolds: [] };
  const extra = loosen(steps, kitchen, budget);
  const found = solve(steps, kitchen, extra, budget) ?? oneAfterAnother(steps);
  const looseHolds = [...extra].map(([stepId, extraMinutes]) => ({ stepId, extraMinutes }));
  return { ...found, looseHolds };
}

type Solved = Omit<Morning, "looseHolds">;

function solve(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  extra: Extra,
  budget: number,
): Solved | undefined {
  const found = schedule(reversed(steps, kitchen, extra), budget);
  if (!("starts" in found)) return undefined;
  const before = new Map(
    steps.map(({ id, minutes }) => [id, (found.starts[id] ?? 0) + minutes] as const),
  );
  return { length: found.makespan, bound: found.bound, before };
}

/** The morning with time running back from the departure. */
function reversed(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  extra: Extra,
): SchedulingProblem {
  const ids = new Set(steps.map(({ id }) => id));
  const pack = steps.find(({ kind }) => kind === "pack");
  const orders = steps.flatMap((step) =>
    step.after
      .filter((id) => ids.has(id) && step !== pack)
      .map((after): Precedence => ({ before: step.id, after, minLag: 0 })),
  );
  const holds = steps.flatMap(({ id, holdMinutesMax }): Precedence[] => {
    if (!pack || id === pack.id) return [];
    const maxLag = holdMinutesMax === null ? undefined : holdMinutesMax + (extra.get(id) ?? 0);
    return [{ before: pack.id, after: id, minLag: 0, maxLag }];
  });
  return {
    tasks: steps.map((step) => ({
      id: step.id,
      duration: step.minutes,
      demands: demandsOf(step),
    })),
    precedences: [...orders, ...holds],
    capacities: capacitiesOf(steps, kitchen),
  };
}

/**
 * How much longer each hold must be for an order to exist: the least that would do if all were longer
 * alike, then each one taken back as far as the others allow, so that no single one could be shorter (as
 * far as short searches can tell).
 */
function loosen(steps: readonly KitchenStep[], kitchen: Kitchen, budget: number): Extra {
  const held = steps.filter(({ holdMinutesMax }) => holdMinutesMax !== null);
  const total = steps.reduce((sum, { minutes }) => sum + minutes, 0);
  const isEnough = (extra: Extra): boolean =>
    solve(steps, kitchen, extra, Math.min(budget, PROBE_STEPS)) !== undefined;
  const alike = least(total, (minutes) => isEnough(new Map(held.map(({ id }) => [id, minutes]))));
  const extra = new Map(held.map(({ id }) => [id, alike]));
  for (const { id } of held) {
    extra.set(
      id,
      least(alike, (minutes) => isEnough(new Map(extra).set(id, minutes))),
    );
  }
  return new Map([...extra].filter(([, minutes]) => minutes > 0));
}

/** The least number from 0 to `most` that is enough, where more is never worse. */
function least(most: number, isEnough: (minutes: number) => boolean): number {
  let [low, high] = [0, most];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isEnough(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Every step after the one before it, the last resort within any budget; nothing is proven of it. */
function oneAfterAnother(steps: readonly KitchenStep[]): Solved {
  const before = new Map<string, number>();
  let length = 0;
  for (const step of [...inDependenceOrder(steps)].reverse()) {
    length += step.minutes;
    before.set(step.id, length);
  }
  const longest = Math.max(0, ...steps.map(({ minutes }) => minutes));
  return { length, bound: longest, before };
}

/** The steps so that each stands after all it waits for. */
export function inDependenceOrder(steps: readonly KitchenStep[]): KitchenStep[] {
  const left = new Map(steps.map((step) => [step.id, step]));
  const ordered: KitchenStep[] = [];
  while (left.size > 0) {
    const ready = [...left.values()].filter(({ after }) => !after.some((id) => left.has(id)));
    if (ready.length === 0) throw new RangeError("The steps wait for each other in a ring.");
    for (const step of ready) {
      left.delete(step.id);
      ordered.push(step);
    }
  }
  return ordered;
}
