/**
 * Two schemes that must not be mixed: what consumers are told, and what the trade must do with written
 * marks. A home lunch is judged by the consumer line; the other is shown for knowledge.
 */
export type HeatScheme = {
  readonly name: string;
  /** Cold food stays at or under this, °C. */
  readonly coldMaxC: number;
  /** Hot food stays at or over this, °C. */
  readonly hotMinC: number;
  /** Minutes allowed between the two lines. */
  readonly outMinutesMax: number;
};

/** 40 and 140 °F, 2 hours: USDA FSIS, "Keeping Bag Lunches Safe". */
export const CONSUMER_SCHEME: HeatScheme = {
  name: "consumer guidance",
  coldMaxC: celsius(40),
  hotMinC: celsius(140),
  outMinutesMax: 120,
};
/** Above 90 °F around it, 1 hour: same page. */
export const CONSUMER_HOT_DAY = { aboveC: celsius(90), outMinutesMax: 60 } as const;

/** 41 and 135 °F: FDA Food Code 3-501.16(A); 4 hours with a written mark: 3-501.19(B). */
export const RETAIL_SCHEME: HeatScheme = {
  name: "retail food code",
  coldMaxC: celsius(41),
  hotMinC: celsius(135),
  outMinutesMax: 240,
};
/** Cold food only, never above 70 °F: 6 hours, FDA Food Code 3-501.19(C). */
export const RETAIL_SIX_HOURS = { neverAboveC: celsius(70), outMinutesMax: 360 } as const;

/** Least inner temperature of hot food as it goes into its container: 165 °F, USDA, 13 August 2019. */
export const HOT_FILL_MIN_C = celsius(165);

/** Minutes that consumer guidance allows at a temperature around the box. */
export function outMinutesMax(roomC: number): number {
  return roomC > CONSUMER_HOT_DAY.aboveC
    ? CONSUMER_HOT_DAY.outMinutesMax
    : CONSUMER_SCHEME.outMinutesMax;
}

/** °F as °C, exact. */
export function celsius(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}
