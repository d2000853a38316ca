import type { Kitchen, KitchenStep } from "#lib/kitchen/index.ts";

/** Steps that need nobody and no heat. */
const ALONE = ["none", "fridge", "freezer"];

type Window = "evening" | "morning";
type Spot = { readonly step: KitchenStep; readonly start: number; readonly window: Window };

/**
 * Every rule of the kitchen that a set of starts breaks, in words. Written from the rules, minute by
 * minute; shares no code with the planner. `loose` are the minutes by which a hold may be passed.
 */
export function brokenKitchenRules(
  spots: readonly Spot[],
  kitchen: Kitchen,
  loose: ReadonlyMap<string, number> = new Map(),
): string[] {
  const broken: string[] = [];
  const pack = spots.find(({ step }) => step.kind === "pack");
  for (const spot of spots) broken.push(...windowRules(spot, kitchen));
  for (const { step, start } of spots) {
    for (const id of step.after) {
      const before = spots.find((other) => other.step.id === id);
      if (before && before.start + before.step.minutes > start)
        broken.push(`${step.id} begins before ${id} is over`);
    }
    const wait = (pack?.start ?? 0) - (start + step.minutes);
    const hold = (step.holdMinutesMax ?? Infinity) + (loose.get(step.id) ?? 0);
    if (pack && step !== pack.step && wait > hold) broken.push(`${step.id} waits ${wait} minutes`);
    if (pack && wait < 0 && step !== pack.step) broken.push(`${step.id} ends after packing began`);
  }
  const first = Math.min(...spots.map(({ start }) => start));
  const last = Math.max(...spots.map(({ step, start }) => start + step.minutes));
  for (let minute = first; minute < last; minute += 1) {
    const running = spots.filter(
      ({ step, start }) => start <= minute && minute < start + step.minutes,
    );
    const count = (of: (step: KitchenStep) => boolean): number =>
      running.filter(({ step }) => of(step)).length;
    if (count((step) => step.handsOn) > kitchen.cooks) broken.push(`too few cooks at ${minute}`);
    for (const appliance of new Set(running.map(({ step }) => step.appliance))) {
      const room = ALONE.includes(appliance) ? Infinity : (kitchen.appliances[appliance] ?? 1);
      if (count((step) => step.appliance === appliance) > room)
        broken.push(`${appliance} twice at ${minute}`);
    }
  }
  return broken;
}

function windowRules({ step, start, window }: Spot, kitchen: Kitchen): string[] {
  const end = start + step.minutes;
  const isAlone = !step.handsOn && ALONE.includes(step.appliance);
  if (window === "morning")
    return [
      ...(end > kitchen.departure ? [`${step.id} ends after the door`] : []),
      ...(start < kitchen.morningFrom ? [`${step.id} begins before the kitchen opens`] : []),
    ];
  return [
    ...(step.earliest === "morning" ? [`${step.id} must wait for the morning`] : []),
    ...(start < kitchen.eveningFrom ? [`${step.id} begins before the evening`] : []),
    ...(isAlone && start > kitchen.bedtime ? [`${step.id} begins after bedtime`] : []),
    ...(isAlone && end > kitchen.morningFrom ? [`${step.id} runs into the morning`] : []),
    ...(!isAlone && end > kitchen.bedtime ? [`${step.id} keeps somebody up`] : []),
  ];
}

/** What the planner is to better, first thing first: minutes before the door, work, evening's end. */
export type KitchenScore = readonly [
  length: number,
  handsOn: number,
  eveningEnd: number | undefined,
];

export function scoreKitchen(spots: readonly Spot[], kitchen: Kitchen): KitchenScore {
  const morning = spots.filter(({ window }) => window === "morning");
  const evening = spots.filter(({ window }) => window === "evening");
  const ends = evening.map(({ step, start }) => {
    const isAlone = !step.handsOn && ALONE.includes(step.appliance);
    const isAwaited = evening.some((other) => other.step.after.includes(step.id));
    return isAlone && !isAwaited ? start : start + step.minutes;
  });
  return [
    kitchen.departure - Math.min(kitchen.departure, ...morning.map(({ start }) => start)),
    morning.reduce((sum, { step }) => sum + (step.handsOn ? step.minutes : 0), 0),
    evening.length === 0 ? undefined : Math.max(...ends),
  ];
}

/** The best score by trying every start in either window; undefined when nothing keeps the rules. */
export function exhaustiveKitchen(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
): KitchenScore | undefined {
  let best: KitchenScore | undefined;
  const spots: Spot[] = [];
  const place = (index: number): void => {
    const step = steps[index];
    if (!step) {
      const score = scoreKitchen(spots, kitchen);
      if (!best || isBetter(score, best)) best = score;
      return;
    }
    for (const window of ["evening", "morning"] as const) {
      const [from, to] =
        window === "evening"
          ? [kitchen.eveningFrom, kitchen.bedtime]
          : [kitchen.morningFrom, kitchen.departure - step.minutes];
      for (let start = from; start <= to; start += 1) {
        // The door is fixed, and the packing ends at it.
        if (step.kind === "pack" && start !== kitchen.departure - step.minutes) continue;
        spots.push({ step, start, window });
        if (brokenKitchenRules(spots, kitchen).length === 0) place(index + 1);
        spots.pop();
      }
    }
  };
  // The packing first, so that every hold can be seen from the beginning.
  steps = [...steps].sort((a, b) => Number(b.kind === "pack") - Number(a.kind === "pack"));
  place(0);
  return best;
}

function isBetter(one: KitchenScore, other: KitchenScore): boolean {
  const index = [0, 1, 2].find((place) => one[place] !== other[place]);
  return index !== undefined && (one[index] ?? 0) < (other[index] ?? 0);
}
