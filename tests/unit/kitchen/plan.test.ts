import { describe, expect, test } from "vitest";
import { planKitchen, waysOut, type Kitchen, type KitchenStep } from "#lib/kitchen/index.ts";
import { brokenKitchenRules } from "#tests/support/check-kitchen.ts";

const KITCHEN: Kitchen = {
  ...{ eveningFrom: 19 * 60 - 1440, bedtime: 22 * 60 - 1440 },
  ...{ morningFrom: 6 * 60, departure: 7 * 60 + 50, cooks: 1, appliances: { oven: 1, hob: 2 } },
};
const at = (hours: number, minutes: number): number => hours * 60 + minutes;

function step(id: string, minutes: number, more: Partial<KitchenStep> = {}): KitchenStep {
  return {
    ...{ id, kind: "food", foodId: id, timingName: id, about: id, name: id, minutes },
    ...{ handsOn: true, appliance: "none", earliest: "morning", holdMinutesMax: null },
    ...{ after: [], recordings: 0, isNightOnly: false },
    ...more,
  };
}
function packed(minutes: number, ...steps: KitchenStep[]): KitchenStep[] {
  return [
    ...steps,
    step("pack", minutes, { kind: "pack", foodId: null, after: steps.map(({ id }) => id) }),
  ];
}

describe("a morning worked by hand", () => {
  // Toast 6 without hands beside cutting 5, then packing 10: up at 07:50 − 10 − 6 = 07:34.
  const steps = packed(
    10,
    step("toast", 6, { handsOn: false, appliance: "toaster" }),
    step("stars", 5),
  );

  test("begins as late as can be, says what is critical and what has slack", () => {
    const plan = planKitchen(steps, KITCHEN);
    expect(plan.getUp).toEqual({ at: at(7, 34), bound: at(7, 34), isProven: true });
    expect(plan.handsOn).toMatchObject({ at: 15, isProven: true });
    expect(
      plan.morning.map(({ step, start, slack, isCritical }) => [step.id, start, slack, isCritical]),
    ).toEqual([
      ["stars", at(7, 34), 1, false],
      ["toast", at(7, 34), 0, true],
      ["pack", at(7, 40), 0, true],
    ]);
  });

  test("from now on begins now, with what is left in hand", () => {
    const plan = planKitchen(steps, KITCHEN, { now: at(7, 20) });
    expect(plan.morning.map(({ start }) => start)).toEqual([at(7, 20), at(7, 20), at(7, 40)]);
    expect(plan.lateBy).toBe(0);
  });

  test("begun late says by how much, and ends as much later", () => {
    const plan = planKitchen(steps, KITCHEN, { now: at(7, 41) });
    expect(plan.lateBy).toBe(7);
    expect(plan.morning.at(-1)).toMatchObject({ start: at(7, 47), end: at(7, 57) });
  });
});

describe("the night before", () => {
  test("takes what may be done then, and what cools alone keeps nobody up", () => {
    const bake = step("bake", 20, { handsOn: false, appliance: "oven", earliest: "evening" });
    const cool = step("cool", 30, {
      ...{ handsOn: false, appliance: "fridge", earliest: "evening", after: ["bake"] },
    });
    const plan = planKitchen(packed(10, bake, cool), KITCHEN);
    expect(plan.evening.map(({ step: { id } }) => id)).toEqual(["bake", "cool"]);
    expect(plan.eveningEnd?.at).toBe(KITCHEN.eveningFrom + 20);
    expect(plan.eveningLatest).toBe(KITCHEN.bedtime - 20);
    expect(plan.morning).toHaveLength(1);
  });

  test("over, leaves out what is of use in the night only", () => {
    const freeze = step("freeze", 1, { earliest: "evening", isNightOnly: true });
    expect(planKitchen(packed(10, freeze), KITCHEN).evening).toHaveLength(1);
    const morning = planKitchen(packed(10, freeze), KITCHEN, { now: at(7, 0) });
    expect(morning.morning.map(({ step }) => step.id)).toEqual(["pack"]);
  });

  test("is not for what would be held too long", () => {
    const slices = (holdMinutesMax: number) =>
      planKitchen(packed(10, step("slices", 4, { earliest: "evening", holdMinutesMax })), KITCHEN);
    // From 22:00 to 07:40 are 580 minutes.
    expect(slices(579).evening).toHaveLength(0);
    expect(slices(580).evening).toMatchObject([{ end: KITCHEN.bedtime, slack: 0 }]);
  });

  test("too full gives back what costs the morning least", () => {
    const short = { ...KITCHEN, bedtime: KITCHEN.eveningFrom + 30 };
    const evening = (id: string, minutes: number) => step(id, minutes, { earliest: "evening" });
    const plan = planKitchen(
      packed(10, evening("a", 12), evening("b", 18), evening("c", 7), evening("d", 9)),
      short,
    );
    // 46 minutes of work in 30: sixteen or more must go; 7 + 9 is the least that does.
    expect(plan.handsOn).toEqual({ at: 26, bound: 26, isProven: true });
    expect(plan.morning.map(({ step }) => step.id).sort()).toEqual(["c", "d", "pack"]);
  });
});

test("a hot filling goes in last; two of them and one cook loosen one hold by one minute", () => {
  const flask = (id: string): KitchenStep[] => [
    step(`heat ${id}`, 6, { appliance: "hob", holdMinutesMax: 5 }),
    step(`fill ${id}`, 1, { holdMinutesMax: 0, after: [`heat ${id}`] }),
  ];
  const one = planKitchen(packed(10, ...flask("soup")), KITCHEN);
  expect(one.looseHolds).toEqual([]);
  expect(one.morning.map(({ start }) => start)).toEqual([at(7, 33), at(7, 39), at(7, 40)]);
  const two = planKitchen(packed(10, ...flask("soup"), ...flask("beans")), KITCHEN);
  expect(two.looseHolds.map(({ extraMinutes }) => extraMinutes).sort()).toEqual([1, 3]);
  const loose = new Map(two.looseHolds.map((hold) => [hold.stepId, hold.extraMinutes]));
  const spots = two.morning.map((placed) => ({ ...placed, window: "morning" as const }));
  expect(brokenKitchenRules(spots, KITCHEN, loose)).toEqual([]);
  expect(brokenKitchenRules(spots, KITCHEN)).not.toEqual([]);
});

test("an appliance that the kitchen is said not to have is named", () => {
  const steps = packed(10, step("bake", 20, { handsOn: false, appliance: "oven" }));
  const plan = planKitchen(steps, { ...KITCHEN, appliances: { oven: 0 } });
  expect(plan.missing).toEqual(["oven"]);
});

test("nothing to do asks for nothing", () => {
  const plan = planKitchen([], KITCHEN);
  expect(plan).toMatchObject({ evening: [], morning: [], lateBy: 0, eveningEnd: undefined });
  expect(plan.getUp.at).toBe(KITCHEN.departure);
});

describe("when it is late", () => {
  const steps = packed(
    16,
    step("toast", 9, { handsOn: false, appliance: "toaster" }),
    step("stars", 4, { kind: "trick", foodId: "cucumber" }),
    step("flags", 3, { kind: "trick", foodId: "cheese" }),
    step("porridge", 6, { appliance: "hob" }),
  );

  test("tricks go first, then the filming, then food; each set says what it wins", () => {
    const [four, eight, twelve, all] = waysOut(steps, KITCHEN, [4, 8, 12, 60]);
    expect(four).toEqual({ go: [{ kind: "trick", stepId: "stars" }], minutes: 4 });
    // Both tricks win but four: the toast takes nine by itself. Off camera the packing takes half.
    expect(eight).toEqual({ go: [{ kind: "plain-pack" }], minutes: 8 });
    expect(twelve).toEqual({
      go: [{ kind: "trick", stepId: "stars" }, { kind: "plain-pack" }],
      minutes: 12,
    });
    // Nothing wins an hour: what wins most is said.
    expect(all).toMatchObject({ minutes: 14 });
  });
});
