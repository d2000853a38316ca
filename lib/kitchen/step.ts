import type { Appliance } from "#lib/catalog/index.ts";

/**
 * One thing to do in the kitchen for one lunch. Minutes are whole; times of a plan are minutes from
 * midnight of the lunch's day, so that the evening before is negative.
 */
export type KitchenStep = {
  /** Stays the same while the lunch changes around it, so that what was ticked stays ticked. */
  readonly id: string;
  readonly kind: "food" | "trick" | "pack";
  /** The food it is for; null for packing. */
  readonly foodId: string | null;
  /** The step's own name within its food, as its minutes are recorded. */
  readonly timingName: string;
  /** What it is about, in words: "cucumber slices", "the tins". */
  readonly about: string;
  readonly name: string;
  readonly minutes: number;
  /** Needs a cook from beginning to end. */
  readonly handsOn: boolean;
  readonly appliance: Appliance;
  /** Evening: may be done the night before. Morning: must wait. */
  readonly earliest: "evening" | "morning";
  /** Of no use in the morning: left out when the evening is over. */
  readonly isNightOnly: boolean;
  /** Longest wait from its end to the packing; null when it keeps. */
  readonly holdMinutesMax: number | null;
  /** Steps that must have ended before it begins. */
  readonly after: readonly string[];
  /** Where the minutes come from: the usual ones, or this kitchen's own records. */
  readonly recordings: number;
};

/** The kitchen: its windows in minutes from midnight of the lunch's day, its cooks, its appliances. */
export type Kitchen = {
  readonly eveningFrom: number;
  readonly bedtime: number;
  readonly morningFrom: number;
  readonly departure: number;
  readonly cooks: number;
  /** How many there are of each; one that is not named is taken as one. */
  readonly appliances: Readonly<Record<string, number>>;
};

/** Whether somebody must be up while it runs: at work, or near heat or blades. Cooling and thawing run alone. */
export function isWatched(step: KitchenStep): boolean {
  return step.handsOn || !RUNS_ALONE.has(step.appliance);
}

/** There is room for all: no step waits for these. */
const RUNS_ALONE: ReadonlySet<Appliance> = new Set(["none", "fridge", "freezer"]);

/** What a step holds while it runs, one unit each: a cook, an appliance. */
export function demandsOf(step: KitchenStep): Record<string, number> {
  return {
    ...(step.handsOn ? { cook: 1 } : {}),
    ...(RUNS_ALONE.has(step.appliance) ? {} : { [step.appliance]: 1 }),
  };
}

/** How many units of each resource there are; an appliance that is said to be missing counts as one. */
export function capacitiesOf(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
): Record<string, number> {
  const names = steps.flatMap((step) => Object.keys(demandsOf(step)));
  return Object.fromEntries(
    names.map((name) => [
      name,
      Math.max(1, name === "cook" ? kitchen.cooks : (kitchen.appliances[name] ?? 1)),
    ]),
  );
}

/** The appliances that steps ask for and the kitchen is said not to have. */
export function missingAppliances(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
): readonly Appliance[] {
  return [...new Set(steps.map(({ appliance }) => appliance))].filter(
    (appliance) => !RUNS_ALONE.has(appliance) && kitchen.appliances[appliance] === 0,
  );
}
