import type { BoxItem } from "../box.ts";
import { bagAfter, type Bag } from "./bag.ts";
import type { Carrying } from "./carrying.ts";
import {
  bagConductance,
  JAR_KJ_PER_K,
  jarConductance,
  perHourOf,
  standardPerHour,
  type Reading,
} from "./containers.ts";
import { hoursUntil, temperatureAfter } from "./cooling.ts";
import { CONSUMER_SCHEME } from "./schemes.ts";
import { specificHeatOf, WATER_KJ } from "./specific-heat.ts";

/** The day around the box. */
export type Surroundings = {
  /** From the lid to eating. */
  readonly hours: number;
  readonly roomC: number;
  /** How far the room may be off, K. */
  readonly roomOffK: number;
};

/** The model's middle answer. */
type Predicted = {
  /** At lunch, °C. */
  readonly atLunchC: number;
  /** The worst it has been: warmest for cold food, coolest for hot. */
  readonly worstC: number;
  /** Minutes on the wrong side of the consumer line. */
  readonly minutesOut: number;
};

/** The middle answer between the two corners where every uncertain value is at its kind and its unkind end. */
export type Prediction = {
  readonly mid: Predicted;
  readonly kind: Predicted;
  readonly unkind: Predicted;
};

/**
 * How far off values may be: a conductance by a quarter when it is worked out or a standard's least, by a
 * tenth when it was read; contact with the cold sources by half; a start by 1 K, a hot fill by 2 K. Common
 * practice, no source; a well-mixed lump also leaves out what lies within thick food.
 */
const OFF = { wall: 0.25, wallRead: 0.1, contact: 0.5, coldStartK: 1, hotFillK: 2 } as const;
/** kJ/(h K) between one cold source and what lies on it: set so that the two cold sources of USDA's advice hold 4.4 °C until noon in a room of 21 °C. */
const CONTACT = 2.2;
const FREEZER_C = -18;

/** Corner of the range: 0 the middle, 1 every value at its unkind end, −1 at its kind end. */
type Corner = -1 | 0 | 1;

/** Hot food in its jar. `kitchenC` warms a jar that was not preheated. */
export function predictHot(
  item: BoxItem,
  portionFactor: number,
  carrying: Carrying,
  around: Surroundings,
): Prediction {
  const held = carrying.jarReading && perHourOf(carrying.jarReading);
  const isRead = held?.ok === true;
  const perHour = isRead ? held.value : standardPerHour(carrying.jarMl);
  const capacityMl = isRead && carrying.jarReading ? carrying.jarReading.waterMl : carrying.jarMl;
  const conductance = jarConductance(capacityMl, perHour);
  const kg = Math.min(item.grams * portionFactor, carrying.jarMl) / 1000;
  const foodKjPerK = kg * specificHeatOf(item.food);
  const kjPerK = foodKjPerK + JAR_KJ_PER_K;
  return corners((corner) => {
    const fillC = Math.min(100, carrying.fillC - corner * OFF.hotFillK);
    const jarC = carrying.isJarPreheated ? fillC : carrying.indoorC;
    const wall = 1 + corner * (isRead ? OFF.wallRead : OFF.wall);
    const lump = {
      startC: (foodKjPerK * fillC + JAR_KJ_PER_K * jarC) / kjPerK,
      roomC: around.roomC - corner * around.roomOffK,
      perHour: (conductance * wall) / kjPerK,
    };
    const atLunchC = temperatureAfter(lump, around.hours);
    const hoursOver = Math.min(around.hours, hoursUntil(lump, CONSUMER_SCHEME.hotMinC));
    return { atLunchC, worstC: atLunchC, minutesOut: (around.hours - hoursOver) * 60 };
  });
}

/** What is in the bag beside the cold sources, for one child; undefined when there is nothing. */
export function predictCold(
  items: readonly BoxItem[],
  portionFactor: number,
  carrying: Carrying,
  around: Surroundings,
): Prediction | undefined {
  const frozen = carrying.freezesDrink ? items.filter(({ part }) => part === "drink") : [];
  const lying = items.filter((item) => !frozen.includes(item));
  const heatOf = (held: readonly BoxItem[]): number =>
    held.reduce(
      (sum, { food, grams }) => sum + (grams / 1000) * portionFactor * specificHeatOf(food),
      0,
    );
  const foodKjPerK = heatOf(lying);
  if (foodKjPerK <= 0) return undefined;
  const warm = carrying.isPrechilled ? [] : lying.filter(({ food }) => food.holding === "none");
  const startC =
    carrying.fridgeC + ((carrying.indoorC - carrying.fridgeC) * heatOf(warm)) / foodKjPerK;
  const drinkKg = frozen.reduce((sum, { grams }) => sum + (grams / 1000) * portionFactor, 0);
  const sources = carrying.packs + frozen.length;
  const read = carrying.bagReading && bagReadAs(carrying.bagReading);
  const conductance = read ?? bagConductance(carrying.bag);
  return corners((corner) => {
    const bag: Bag = {
      foodKjPerK,
      foodC: startC + corner * OFF.coldStartK,
      iceKg: (carrying.packs * carrying.packGrams) / 1000 + drinkKg,
      iceC: FREEZER_C,
      conductance: conductance * (1 + corner * (read === null ? OFF.wall : OFF.wallRead)),
      contact: sources * CONTACT * (corner === 0 ? 1 : 1 - corner * OFF.contact),
      roomC: around.roomC + corner * around.roomOffK,
    };
    const after = bagAfter(bag, around.hours, CONSUMER_SCHEME.coldMaxC);
    return {
      atLunchC: after.foodC,
      worstC: after.warmestC,
      minutesOut: after.minutesAbove,
    };
  });
}

/** A reading of the bag as the heat it passes; null for one that no warming can give. */
function bagReadAs(reading: Reading): number | null {
  const perHour = perHourOf(reading);
  return perHour.ok ? perHour.value * (reading.waterMl / 1000) * WATER_KJ : null;
}

function corners(at: (corner: Corner) => Predicted): Prediction {
  return { mid: at(0), kind: at(-1), unkind: at(1) };
}
