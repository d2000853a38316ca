/**
 * Exact sizes of US customary measures in grams or millilitres, from their definitions: pound
 * 0.45359237 kg and gallon 231 in³ at 2.54 cm to the inch (NIST Handbook 44, Appendix C, "General
 * Tables of Units of Measurement"; NIST SP 811, Appendix B.8). Smaller ones are exact divisions.
 */
export const EXACT_SIZES = [
  ["lb", 453.59237],
  ["oz", 28.349523125],
  ["gallon", 3785.411784],
  ["quart", 946.352946],
  ["pint", 473.176473],
  ["cup", 236.5882365],
  ["fl oz", 29.5735295625],
  ["tbsp", 14.78676478125],
  ["tsp", 4.92892159375],
  ["kg", 1000],
  ["l", 1000],
  ["dl", 100],
  ["cl", 10],
] as const;

/** Rounded household values: NIST SP 430, "Household Weights and Measures". */
export const HOUSEHOLD_ML = [
  ["cup", 237, 0.5],
  ["tbsp", 15, 0.5],
  ["tsp", 4.9, 0.05],
] as const;

/** The cup of nutrition labels: 21 CFR 101.9(b)(5)(viii). */
export const LABEL_CUP = 240;
