import type { Food, PrepStep, Trick } from "#lib/catalog/index.ts";

type SteppedFood = Pick<Food, "prepSteps" | "traits" | "group" | "sliceable">;

/**
 * The steps of a food: its own, or what its kind usually asks for where it names none (common practice,
 * no source). What is bought ready to eat asks for none.
 */
export function stepsOfFood(food: SteppedFood): readonly PrepStep[] {
  if (food.prepSteps.length > 0) return food.prepSteps;
  const isReady = food.traits.includes("shop-bought");
  if (food.traits.includes("messy") && !isReady) return [byHand("Spoon into a lidded pot", 1)];
  if (food.group === "fat") return [byHand("Spoon into a lidded pot", 1)];
  if (food.sliceable) return [byHand("Cut to fit the tin", 1)];
  if (food.group === "grain" && !isReady) return [byHand("Split", 1)];
  return [];
}

function byHand(name: string, minutes: number): PrepStep {
  return {
    ...{ name, minutes, handsOn: true, appliance: "none" },
    ...{ earliest: "evening", holdMinutesMax: null },
  };
}

/**
 * A trick as a step: by hand and in the morning, since it is on camera and most look tired by the next
 * day (common practice, no source). One that browns when cut waits at most four hours, as cut avocado
 * in the catalogue does.
 */
export function stepOfTrick(
  trick: Pick<Trick, "name" | "kind" | "minutes">,
  food: Pick<Food, "traits">,
): PrepStep {
  const isCut = trick.kind === "cut" || trick.kind === "cutter";
  const browns = isCut && food.traits.includes("browns-when-cut");
  return {
    name: `${VERBS[trick.kind]} ${trick.name}`,
    minutes: trick.minutes,
    handsOn: true,
    appliance: "none",
    earliest: "morning",
    holdMinutesMax: browns ? 240 : null,
  };
}

const VERBS: Readonly<Record<Trick["kind"], string>> = {
  cut: "Make the",
  cutter: "Cut out with the",
  pick: "Add the",
  container: "Put into the",
  garnish: "Add the",
};

/**
 * What a lunch that must stay cold asks for besides its foods: two cold sources a bag (USDA, "Keeping
 * bag lunches safe"), frozen overnight; the minutes are common practice, no source.
 */
export const COLD_STEPS: readonly PrepStep[] = [
  { ...byHand("Put into the freezer", 1), appliance: "freezer" },
  { ...byHand("Put into the bags", 1), earliest: "morning" },
];

/**
 * Usual minutes to pack on camera: one for each item in each tin, and two for the empty and the full
 * tin (common practice, no source). Learned from the mornings recorded.
 */
export function packMinutes(items: number, tins: number): number {
  return 2 + items * Math.max(1, tins);
}
