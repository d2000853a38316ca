import fc from "fast-check";
import type { Kitchen, KitchenStep } from "#lib/kitchen/index.ts";

/** A kitchen morning: some foods' chains of steps, then the packing. */
export type KitchenCase = { readonly steps: readonly KitchenStep[]; readonly kitchen: Kitchen };

type Size = {
  readonly foods: number;
  readonly stepsEach: number;
  readonly minutes: number;
  readonly kitchen: Omit<Kitchen, "cooks" | "appliances">;
  /** Hold limits drawn from. */
  readonly holds: readonly (number | null)[];
};

/** A handful of steps in windows of a few minutes, small enough to try everything. */
export const TINY: Size = {
  foods: 2,
  stepsEach: 2,
  minutes: 3,
  kitchen: { eveningFrom: -30, bedtime: -24, morningFrom: -16, departure: 0 },
  holds: [null, null, 0, 2, 5, 22],
};

/** A family's morning of 5 to 25 steps. */
export const USUAL: Size = {
  foods: 8,
  stepsEach: 3,
  minutes: 15,
  kitchen: { eveningFrom: -300, bedtime: -120, morningFrom: 0, departure: 470 },
  holds: [null, null, null, 5, 10, 30, 60, 240, 720],
};

/** Random mornings of a size; `isTight` makes the evening too short for all that may be done then. */
export function kitchenCases(size: Size, earliest: readonly KitchenStep["earliest"][]) {
  const step = fc.record({
    minutes: fc.integer({ min: 1, max: size.minutes }),
    handsOn: fc.boolean(),
    appliance: fc.constantFrom("none" as const, "hob" as const, "oven" as const, "fridge" as const),
    earliest: fc.constantFrom(...earliest),
    holdMinutesMax: fc.constantFrom(...size.holds),
  });
  return fc
    .record({
      foods: fc.array(fc.array(step, { minLength: 1, maxLength: size.stepsEach }), {
        minLength: 1,
        maxLength: size.foods,
      }),
      packMinutes: fc.integer({ min: 1, max: size.minutes }),
      cooks: fc.integer({ min: 1, max: 2 }),
      hobs: fc.integer({ min: 1, max: 2 }),
    })
    .map(({ foods, packMinutes, cooks, hobs }): KitchenCase => {
      const named = { recordings: 0, isNightOnly: false, timingName: "", about: "", name: "" };
      const steps = foods.flatMap((chain, food) =>
        chain.map((drawn, index): KitchenStep => {
          const after = index === 0 ? [] : [`${food}/${index - 1}`];
          return {
            ...named,
            ...drawn,
            id: `${food}/${index}`,
            kind: "food",
            foodId: `${food}`,
            after,
          };
        }),
      );
      const pack: KitchenStep = {
        ...{
          ...named,
          id: "pack",
          kind: "pack",
          foodId: null,
          minutes: packMinutes,
          handsOn: true,
        },
        ...{ appliance: "none", earliest: "morning", holdMinutesMax: null },
        after: steps.map(({ id }) => id),
      };
      const kitchen = { ...size.kitchen, cooks, appliances: { oven: 1, hob: hobs } };
      return { steps: [...steps, pack], kitchen };
    });
}
