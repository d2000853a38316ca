import { eveningWindow, handsOnMinutes, planEvening, type Evening } from "./evening.ts";
import { planMorning, type Morning } from "./morning.ts";
import type { Kitchen, KitchenStep } from "./step.ts";

/** Which steps are done the night before and which in the morning, with what is proven of it. */
export type Split = {
  readonly evening: readonly KitchenStep[];
  readonly morning: readonly KitchenStep[];
  readonly eveningPlan: Evening;
  readonly morningPlan: Morning;
  /** Proven: no split makes the morning shorter. */
  readonly lengthBound: number;
  /** Proven: no split with so short a morning leaves it fewer minutes of hands-on work. */
  readonly handsOnBound: number;
};

type Node = {
  readonly morning: readonly KitchenStep[];
  readonly plan: Morning;
  readonly handsOn: number;
};

/** Splits looked at before the search settles for a good one. */
const SPLITS_MAX = 40;
/** Steps of the scheduler's search for each but the first, so that a full evening stays quick to plan. */
const FURTHER_STEPS = 3_000;

/**
 * The split with the shortest morning, then the least hands-on work in it. Whatever may be done the
 * night before is: taking a step out of the morning never lengthens it. Only where the evening is too
 * full do steps move back, best first; a morning never gets shorter by a step more, so the first split
 * whose evening works out is proven the best.
 */
export function splitNight(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  packAt: number,
  budget: number,
): Split {
  const further = Math.min(budget, FURTHER_STEPS);
  const nodeOf = (morning: readonly KitchenStep[], steps = further): Node => ({
    morning,
    plan: planMorning(morning, kitchen, steps),
    handsOn: handsOnMinutes(morning),
  });
  const restOf = ({ morning }: Node): KitchenStep[] =>
    steps.filter((step) => !morning.includes(step));
  const root = nodeOf(mornings(steps, kitchen, packAt), budget);
  const open = [root];
  const seen = new Set<string>();
  /** What was passed over without a proof may be as short as this. */
  let passedOver = Infinity;
  for (let looks = 0; ; looks += 1) {
    // When the looks are used up, go straight on from the best instead of widening the search.
    if (looks >= SPLITS_MAX) {
      passedOver = Math.min(passedOver, ...open.splice(1).map(({ plan }) => plan.bound));
    }
    const node = open.shift();
    if (!node) throw new Error("A morning with every step in it was not tried.");
    const evening = restOf(node);
    const eveningPlan = planEvening(evening, kitchen, packAt, node === root ? budget : further);
    if (typeof eveningPlan === "object") {
      const lengthBound = Math.min(
        node.plan.bound,
        passedOver,
        ...open.map(({ plan }) => plan.bound),
      );
      return {
        ...{ evening, morning: node.morning, eveningPlan, morningPlan: node.plan, lengthBound },
        handsOnBound: lengthBound === node.plan.length ? node.handsOn : root.handsOn,
      };
    }
    if (eveningPlan === "undecided") passedOver = Math.min(passedOver, node.plan.bound);
    const next = oneMore(node.morning, evening).filter((morning) => isNew(seen, morning));
    open.push(...next.map((morning) => nodeOf(morning)));
    open.sort(byLooseThenLengthThenWork);
  }
}

/** Holds that must give way come first: a limit kept is worth more than minutes in bed. */
function byLooseThenLengthThenWork(a: Node, b: Node): number {
  return (
    looseMinutes(a) - looseMinutes(b) || a.plan.length - b.plan.length || a.handsOn - b.handsOn
  );
}

function looseMinutes({ plan }: Node): number {
  return plan.looseHolds.reduce((sum, { extraMinutes }) => sum + extraMinutes, 0);
}

/** The steps that must wait for the morning, and all that comes after them. */
function mornings(
  steps: readonly KitchenStep[],
  kitchen: Kitchen,
  packAt: number,
): readonly KitchenStep[] {
  const morning = new Set(
    steps.filter((step) => !eveningWindow(step, kitchen, packAt)).map(({ id }) => id),
  );
  for (let size = -1; size !== morning.size;) {
    size = morning.size;
    for (const { id, after } of steps)
      if (after.some((before) => morning.has(before))) morning.add(id);
  }
  return steps.filter(({ id }) => morning.has(id));
}

/** The morning with one step more: one that nothing of the evening waits for. */
function oneMore(
  morning: readonly KitchenStep[],
  evening: readonly KitchenStep[],
): (readonly KitchenStep[])[] {
  const awaited = new Set(evening.flatMap(({ after }) => after));
  return evening.filter(({ id }) => !awaited.has(id)).map((step) => [...morning, step]);
}

function isNew(seen: Set<string>, morning: readonly KitchenStep[]): boolean {
  const key = morning
    .map(({ id }) => id)
    .sort()
    .join("\n");
  if (seen.has(key)) return false;
  seen.add(key);
  return true;
}
