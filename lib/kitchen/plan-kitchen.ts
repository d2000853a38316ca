import { eveningWindow, handsOnMinutes } from "./evening.ts";
import type { LooseHold } from "./morning.ts";
import { putInOrder, type Limits, type Placed } from "./order.ts";
import { splitNight, type Split } from "./split-night.ts";
import { isWatched, missingAppliances, type Kitchen, type KitchenStep } from "./step.ts";

/** A value with what is proven of it. */
export type Proven = {
  readonly at: number;
  /** Proven: nothing better than this exists. */
  readonly bound: number;
  readonly isProven: boolean;
};

/** The kitchen's work for one lunch, in two windows. Times are minutes from midnight of its day. */
export type KitchenPlan = {
  readonly evening: readonly Placed[];
  readonly morning: readonly Placed[];
  /** The latest minute at which the morning's work may begin. */
  readonly getUp: Proven;
  /** Hands-on minutes of the morning. */
  readonly handsOn: Proven;
  /** When the evening's work is over; undefined when there is none. */
  readonly eveningEnd: Proven | undefined;
  /** The latest minute at which the evening's work may begin, in the plan's order. */
  readonly eveningLatest: number | undefined;
  readonly looseHolds: readonly LooseHold[];
  /** Minutes by which the morning is too long: it would have to begin before it can. 0: it fits. */
  readonly lateBy: number;
  readonly missing: ReturnType<typeof missingAppliances>;
};

/** Steps of the scheduler's search for each morning and evening looked at. */
const KITCHEN_STEPS = 20_000;

/**
 * Plans the night before and the morning: the latest time to get up, then the least hands-on work in
 * the morning, then the shortest evening, each with what is proven. Done steps are left out of `steps`
 * by the caller. With `now`, nothing is planned before that minute, and the steps begin as soon as they
 * may instead of waiting for the latest time to get up.
 */
export function planKitchen(
  all: readonly KitchenStep[],
  kitchen: Kitchen,
  { now, budget = KITCHEN_STEPS }: { readonly now?: number; readonly budget?: number } = {},
): KitchenPlan {
  const isNightOver = now !== undefined && now >= kitchen.bedtime;
  const steps = isNightOver ? all.filter(({ isNightOnly }) => !isNightOnly) : all;
  const open = { ...kitchen, eveningFrom: Math.max(kitchen.eveningFrom, now ?? -Infinity) };
  const pack = steps.find(({ kind }) => kind === "pack");
  const packAt = kitchen.departure - (pack?.minutes ?? 0);
  const split = splitNight(steps, open, packAt, budget);
  const { morningPlan } = split;
  const getUp = kitchen.departure - morningPlan.length;
  const floor = Math.max(kitchen.morningFrom, now ?? -Infinity);
  const lateBy = split.morning.length === 0 ? 0 : Math.max(0, floor - getUp);
  const evening = orderEvening(split, open, packAt);
  return {
    evening,
    morning: orderMorning(split, kitchen, packAt, now),
    getUp: proven(getUp, kitchen.departure - split.lengthBound),
    handsOn: proven(handsOnMinutes(split.morning), split.handsOnBound),
    eveningEnd:
      evening.length === 0 ? undefined : proven(split.eveningPlan.end, split.eveningPlan.bound),
    eveningLatest:
      evening.length === 0
        ? undefined
        : Math.min(...evening.map(({ start, slack }) => start + slack)),
    looseHolds: morningPlan.looseHolds,
    lateBy,
    missing: missingAppliances(steps, kitchen),
  };
}

function proven(at: number, bound: number): Proven {
  return { at, bound, isProven: at === bound };
}

function orderEvening(split: Split, kitchen: Kitchen, packAt: number): Placed[] {
  const { evening, eveningPlan } = split;
  const none: Limits = { from: kitchen.eveningFrom, to: kitchen.bedtime };
  return putInOrder(
    evening,
    eveningPlan.starts,
    (step) => eveningWindow(step, kitchen, packAt) ?? none,
    (step) => (isWaitedFor(step, evening) ? eveningPlan.end : Infinity),
  ).map((placed) => ({
    ...placed,
    isCritical: placed.isCritical && isWaitedFor(placed.step, evening),
  }));
}

/** Whether somebody stays up for a step: what runs alone and is needed in the morning holds nobody up. */
function isWaitedFor(step: KitchenStep, evening: readonly KitchenStep[]): boolean {
  return isWatched(step) || evening.some(({ after }) => after.includes(step.id));
}

/**
 * The morning in the order that was proven, each step as soon as it may begin: after getting up, and
 * late enough for its hold. When it is later than that already, all moves by as much.
 */
function orderMorning(
  { morning, morningPlan }: Split,
  kitchen: Kitchen,
  packAt: number,
  now: number | undefined,
): Placed[] {
  const getUp = kitchen.departure - morningPlan.length;
  const isMorning = now !== undefined && now >= kitchen.morningFrom;
  const begin = isMorning ? now : getUp;
  const late = Math.max(0, begin - getUp);
  const extra = new Map(morningPlan.looseHolds.map((loose) => [loose.stepId, loose.extraMinutes]));
  const starts = new Map(
    [...morningPlan.before].map(([id, before]) => [id, kitchen.departure + late - before]),
  );
  const limitsOf = (step: KitchenStep): Limits => {
    const to = kitchen.departure + late - step.minutes;
    if (step.kind === "pack") return { from: packAt + late, to };
    const hold = step.holdMinutesMax ?? Infinity;
    const from = packAt + late - hold - (extra.get(step.id) ?? 0) - step.minutes;
    return { from: Math.max(begin, from), to };
  };
  return putInOrder(morning, starts, limitsOf, () => kitchen.departure + late);
}
