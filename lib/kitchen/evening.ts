import { schedule, type Precedence } from "#lib/prep/index.ts";
import { capacitiesOf, demandsOf, isWatched, type Kitchen, type KitchenStep } from "./step.ts";

/** An evening's work: when each step begins and when the last one that needs somebody is over. */
export type Evening = {
  readonly starts: ReadonlyMap<string, number>;
  readonly end: number;
  /** Proven: the work cannot be over sooner. */
  readonly bound: number;
};

/** When a step may begin in the evening, in minutes from midnight of the lunch's day. */
export type StartWindow = { readonly from: number; readonly to: number };

/**
 * When a step may begin in the evening; undefined when it may not be done then: it must wait for the
 * morning, would be held too long by the packing, or does not end in time. What runs alone may go on
 * through the night, until the kitchen opens.
 */
export function eveningWindow(
  step: KitchenStep,
  kitchen: Kitchen,
  packAt: number,
): StartWindow | undefined {
  if (step.earliest === "morning") return undefined;
  const hold = step.holdMinutesMax ?? Infinity;
  const from = Math.max(kitchen.eveningFrom, packAt - hold - step.minutes);
  const to = isWatched(step)
    ? kitchen.bedtime - step.minutes
    : Math.min(kitchen.bedtime, kitchen.morningFrom - step.minutes);
  return from <= to ? { from, to } : undefined;
}

const SOURCE = "";

/** The shortest evening; "impossible" is proven, "undecided" means that the budget ended first. */
export function planEvening(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  packAt: number,
  budget: number,
): Evening | "impossible" | "undecided" {
  const { eveningFrom } = kitchen;
  if (steps.length === 0) return { starts: new Map(), end: eveningFrom, bound: eveningFrom };
  const windows: Precedence[] = [];
  for (const step of steps) {
    const window = eveningWindow(step, kitchen, packAt);
    if (!window) return "impossible";
    windows.push({
      ...{ before: SOURCE, after: step.id, from: "start" },
      minLag: window.from - kitchen.eveningFrom,
      maxLag: window.to - kitchen.eveningFrom,
    });
  }
  if (handsOnMinutes(steps) > kitchen.cooks * (kitchen.bedtime - kitchen.eveningFrom))
    return "impossible";
  const ids = new Set(steps.map(({ id }) => id));
  const awaited = new Set(steps.flatMap(({ after }) => after));
  const found = schedule(
    {
      tasks: [
        { id: SOURCE, duration: 0, demands: {} },
        ...steps.map((step) => ({
          id: step.id,
          // Nobody waits up for what runs alone and is needed in the morning only.
          duration: isWatched(step) || awaited.has(step.id) ? step.minutes : 0,
          demands: demandsOf(step),
        })),
      ],
      precedences: [
        ...windows,
        ...steps.flatMap((step) =>
          step.after
            .filter((id) => ids.has(id))
            .map((before): Precedence => ({ before, after: step.id, minLag: 0 })),
        ),
      ],
      capacities: capacitiesOf(steps, kitchen),
    },
    budget,
  );
  if ("conflict" in found) return "impossible";
  if (!("starts" in found)) return "undecided";
  const zero = kitchen.eveningFrom - (found.starts[SOURCE] ?? 0);
  return {
    starts: new Map(steps.map(({ id }) => [id, zero + (found.starts[id] ?? 0)])),
    end: zero + found.makespan,
    bound: kitchen.eveningFrom + found.bound,
  };
}

/** Minutes that cooks spend on the steps. */
export function handsOnMinutes(steps: readonly KitchenStep[]): number {
  return steps.reduce((sum, step) => sum + (step.handsOn ? step.minutes : 0), 0);
}
