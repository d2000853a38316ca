import { ICE_KJ, LATENT_KJ, WATER_KJ } from "./specific-heat.ts";

/** A bag as two lumps that touch: what is to eat, and the cold sources with their latent heat. */
export type Bag = {
  /** Heat capacity of what is to eat, kJ/K, and its temperature, °C. */
  readonly foodKjPerK: number;
  readonly foodC: number;
  /** Water in the cold sources, kg, and their temperature, °C; 0 kg: none. */
  readonly iceKg: number;
  readonly iceC: number;
  /** Heat the bag passes, kJ/(h K). */
  readonly conductance: number;
  /** Heat between the cold sources and the food, kJ/(h K). */
  readonly contact: number;
  readonly roomC: number;
};

export type BagAfter = {
  readonly foodC: number;
  readonly iceC: number;
  /** The warmest the food has been. */
  readonly warmestC: number;
  /** Minutes the food was above the line. */
  readonly minutesAbove: number;
  /** Heat that came in through the bag, kJ. */
  readonly heatInKj: number;
  /** kJ that food and cold sources hold, before and after, from water and food at 0 °C. */
  readonly heldBeforeKj: number;
  readonly heldAfterKj: number;
};

/** Share of the bag's wall that lies against the cold sources (common practice, no source). */
const ICE_WALL = 0.3;
/** Longest step, hours, and the largest share of the fastest time constant in one: keeps it stable. */
const STEP_HOURS = 1 / 60;
const STEP_SHARE = 0.1;

/**
 * The bag after some hours, in small explicit steps. Heat is booked as it flows, so what comes in is what
 * is held more, to rounding; the cold sources stay at 0 °C while they melt.
 */
export function bagAfter(bag: Bag, hours: number, lineC: number): BagAfter {
  const { foodKjPerK, iceKg, roomC, conductance, contact } = bag;
  const wall = iceKg > 0 ? ICE_WALL : 0;
  const step = stepOf(bag);
  let foodKj = foodKjPerK * bag.foodC;
  let iceKj = iceHeld(iceKg, bag.iceC);
  const heldBeforeKj = foodKj + iceKj;
  let [elapsed, hoursAbove, heatInKj, warmestC] = [0, 0, 0, bag.foodC];
  while (elapsed < hours) {
    const dt = Math.min(step, hours - elapsed);
    const foodC = foodKj / foodKjPerK;
    const iceC = iceTemperature(iceKg, iceKj);
    const intoFood = conductance * (1 - wall) * (roomC - foodC) * dt;
    const intoIce = conductance * wall * (roomC - iceC) * dt;
    const across = iceKg > 0 ? contact * (foodC - iceC) * dt : 0;
    if (foodC > lineC) hoursAbove += dt;
    foodKj += intoFood - across;
    iceKj += intoIce + across;
    heatInKj += intoFood + intoIce;
    warmestC = Math.max(warmestC, foodKj / foodKjPerK);
    elapsed += dt;
  }
  return {
    foodC: foodKj / foodKjPerK,
    iceC: iceTemperature(iceKg, iceKj),
    ...{ warmestC, minutesAbove: hoursAbove * 60, heatInKj, heldBeforeKj },
    heldAfterKj: foodKj + iceKj,
  };
}

function stepOf({ foodKjPerK, iceKg, conductance, contact }: Bag): number {
  const through = conductance + contact;
  const least = iceKg > 0 ? Math.min(foodKjPerK, iceKg * ICE_KJ) : foodKjPerK;
  return through > 0 ? Math.min(STEP_HOURS, (STEP_SHARE * least) / through) : STEP_HOURS;
}

/** kJ held by water or ice, from water at 0 °C; what stands at 0 °C is ice. */
function iceHeld(kg: number, celsius: number): number {
  return celsius <= 0 ? kg * (ICE_KJ * celsius - LATENT_KJ) : kg * WATER_KJ * celsius;
}

/** Temperature of water or ice that holds so much; 0 °C while it melts. */
function iceTemperature(kg: number, heldKj: number): number {
  if (kg <= 0) return 0;
  if (heldKj > 0) return heldKj / (kg * WATER_KJ);
  const frozen = heldKj + kg * LATENT_KJ;
  return frozen < 0 ? frozen / (kg * ICE_KJ) : 0;
}
