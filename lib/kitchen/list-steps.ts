import type { Food, PrepStep, Trick } from "#lib/catalog/index.ts";
import { learnMinutes } from "./learn-minutes.ts";
import type { KitchenStep } from "./step.ts";
import { COLD_STEPS, packMinutes, stepOfTrick, stepsOfFood } from "./usual-steps.ts";

/** An item to be packed, with its tricks. */
export type KitchenItem = {
  readonly food: Pick<
    Food,
    "id" | "name" | "prepSteps" | "traits" | "group" | "sliceable" | "holding"
  >;
  readonly tricks: readonly Pick<Trick, "id" | "name" | "kind" | "minutes">[];
};

/** Minutes recorded of a step, newest first; none when it was never recorded. */
export type Recorded = (foodId: string | null, timingName: string) => readonly number[];

/** A wait shorter than this before the packing means that a food is hot or limp soon. */
const SHORT_HOLD_MINUTES = 60;

/** The id, and the name under which its minutes are kept, of the packing. */
export const PACKING = "pack";

/**
 * Everything to do for a lunch: each food's steps once, in their order, its tricks, then the packing
 * after all. A food that asks for nothing and carries no trick only gets packed.
 */
export function listSteps(
  items: readonly KitchenItem[],
  tins: number,
  recorded: Recorded,
): KitchenStep[] {
  const seen = new Set<string>();
  const steps = items.flatMap((item) => {
    const isFirst = !seen.has(item.food.id);
    seen.add(item.food.id);
    return stepsOfItem(item, isFirst, recorded);
  });
  if (items.length === 0) return steps;
  const isCold = items.some(({ food }) => food.holding === "cold");
  const before = [
    ...dropTwins(steps),
    ...(isCold ? inOrder(COLD_STEPS.map(named), ICE_PACKS, recorded) : []),
  ];
  const usual = packMinutes(items.length, tins);
  const pack: KitchenStep = {
    ...{ id: PACKING, kind: "pack", foodId: null, timingName: PACKING, about: "the tins" },
    ...{ name: "Pack, on camera", handsOn: true, appliance: "none", earliest: "morning" },
    ...{
      isNightOnly: false,
      holdMinutesMax: null,
      ...learnMinutes(usual, recorded(null, PACKING)),
    },
    after: before.map(({ id }) => id),
  };
  return [...before, pack];
}

const ICE_PACKS = { id: null, name: "ice packs" } as const;

function stepsOfItem(item: KitchenItem, isFirst: boolean, recorded: Recorded): KitchenStep[] {
  const { food, tricks } = item;
  const own = stepsOfFood(food).map(named);
  const cuts: Named[] = [];
  const dressings: Named[] = [];
  for (const trick of tricks) {
    // The flask of a hot food is in the food's own steps already.
    if (trick.kind === "container" && own.some(({ step }) => /flask/i.test(step.name))) continue;
    const named = {
      step: stepOfTrick(trick, food),
      kind: "trick",
      timingName: `trick:${trick.id}`,
    };
    (trick.kind === "cut" || trick.kind === "cutter" ? cuts : dressings).push(named as Named);
  }
  // What is cut is cut before the food is heated or filled, else after all its steps.
  const hot = own.findIndex(({ step }) => (step.holdMinutesMax ?? Infinity) < SHORT_HOLD_MINUTES);
  const cutAt = hot < 0 ? own.length : hot;
  const chain = [...own.slice(0, cutAt), ...cuts, ...own.slice(cutAt)];
  const written = inOrder(chain, food, recorded);
  const lastBeforeHeat = written[cutAt + cuts.length - 1]?.id;
  const dressed = dressings.map((dressing) =>
    writeStep(dressing, food, lastBeforeHeat === undefined ? [] : [lastBeforeHeat], recorded),
  );
  const all = [...written, ...dressed];
  return isFirst ? all : all.filter(({ kind }) => kind === "trick");
}

/** A step under its own name; the second of one name is told apart. */
function named(step: PrepStep, index: number, all: readonly PrepStep[]): Named {
  const earlier = all.slice(0, index).filter(({ name }) => name === step.name).length;
  const timingName = earlier === 0 ? step.name : `${step.name} (${earlier + 1})`;
  return { step, kind: "food", timingName };
}

type About = { readonly id: string | null; readonly name: string };

type Named = {
  readonly step: PrepStep;
  readonly kind: "food" | "trick";
  readonly timingName: string;
};

/** One after another; a step that runs alongside waits only for what the one before it waits for. */
function inOrder(chain: readonly Named[], food: About, recorded: Recorded) {
  const steps: KitchenStep[] = [];
  let open: string[] = [];
  for (const link of chain) {
    const before = steps.at(-1);
    const isAlongside = link.step.alongside === true && before !== undefined;
    const step = writeStep(link, food, isAlongside ? before.after : open, recorded);
    open = isAlongside ? [...open, step.id] : [step.id];
    steps.push(step);
  }
  return steps;
}

function writeStep(
  { step, kind, timingName }: Named,
  food: About,
  after: readonly string[],
  recorded: Recorded,
): KitchenStep {
  return {
    ...{ id: `${food.id ?? food.name}/${timingName}`, kind, foodId: food.id, timingName },
    about: food.name,
    ...{ name: step.name, handsOn: step.handsOn, appliance: step.appliance },
    ...{ earliest: step.earliest, holdMinutesMax: wholeOrNull(step.holdMinutesMax) },
    // What freezes takes the night.
    isNightOnly: step.appliance === "freezer",
    ...learnMinutes(step.minutes, recorded(food.id, timingName)),
    after,
  };
}

function wholeOrNull(minutes: number | null): number | null {
  return minutes === null ? null : Math.floor(minutes);
}

/** The same trick on the same food twice is one step. */
function dropTwins(steps: readonly KitchenStep[]): KitchenStep[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  return [...byId.values()];
}
