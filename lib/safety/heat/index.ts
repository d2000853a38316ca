/** Heat: temperatures from the lid to lunch by one or two well-mixed lumps, and what guidance says of them. */
export { bagAfter, type Bag } from "./bag.ts";
export { Carrying, ReadingTaken, USUAL_CARRYING } from "./carrying.ts";
export type { Journey } from "./check-temperature.ts";
export {
  BAG_KINDS,
  bagConductance,
  describeReadingProblem,
  JAR_KJ_PER_K,
  JAR_MINIMA,
  jarConductance,
  perHourOf,
  standardPerHour,
  type BagKind,
} from "./containers.ts";
export { heatGivenOff, hoursUntil, temperatureAfter } from "./cooling.ts";
export { predictCold, predictHot, type Prediction } from "./predict.ts";
export {
  celsius,
  CONSUMER_HOT_DAY,
  CONSUMER_SCHEME,
  HOT_FILL_MIN_C,
  outMinutesMax,
  RETAIL_SCHEME,
  RETAIL_SIX_HOURS,
  type HeatScheme,
} from "./schemes.ts";
export { ICE_KJ, LATENT_KJ, specificHeatOf, WATER_KJ } from "./specific-heat.ts";
export { isTimeSensitive } from "./time-sensitive.ts";
