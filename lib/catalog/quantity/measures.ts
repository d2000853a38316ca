/**
 * Measures of weight and volume with their exact sizes. US customary units are the exact NIST values:
 * the avoirdupois pound is 0.45359237 kg and the gallon 231 cubic inches, an inch being 2.54 cm
 * (NIST Handbook 44, Appendix C; NIST SP 811, Appendix B). Everything smaller follows by division.
 */
const GRAMS_PER_POUND = 453.59237;
const ML_PER_GALLON = 231 * 2.54 ** 3;

/** Millilitres of the exact US cup, a sixteenth of a gallon: 236.5882365. */
export const CUP_ML = ML_PER_GALLON / 16;
/**
 * Millilitres of the cup of US nutrition labels (21 CFR 101.9(b)(5)(viii)). It is 1.44 % larger than
 * the exact cup, and is used only where a label says so.
 */
export const LABEL_CUP_ML = 240;

type MeasureShape = {
  readonly kind: "weight" | "volume";
  /** Grams of one for a weight, millilitres of one for a volume. */
  readonly size: number;
  readonly plural: string;
  /** Spellings it is recognised by, besides its own name; small letters, singular. */
  readonly words: readonly string[];
  /** Cooks write US customary amounts in fractions, metric ones in decimals. */
  readonly writtenIn: "fractions" | "decimals";
};

export const MEASURES = {
  g: weight(1, "g", ["gram", "gramme", "gm", "gr"], "decimals"),
  kg: weight(1000, "kg", ["kilogram", "kilo"], "decimals"),
  mg: weight(0.001, "mg", ["milligram"], "decimals"),
  oz: weight(GRAMS_PER_POUND / 16, "oz", ["ounce"], "fractions"),
  lb: weight(GRAMS_PER_POUND, "lb", ["pound", "lbs"], "fractions"),
  ml: volume(1, "ml", ["milliliter", "millilitre", "cc"], "decimals"),
  cl: volume(10, "cl", ["centiliter", "centilitre"], "decimals"),
  dl: volume(100, "dl", ["deciliter", "decilitre"], "decimals"),
  l: volume(1000, "l", ["liter", "litre", "ltr"], "decimals"),
  tsp: volume(CUP_ML / 48, "tsp", ["teaspoon", "teaspoonful", "tsps", "t"], "fractions"),
  tbsp: volume(
    CUP_ML / 16,
    "tbsp",
    ["tablespoon", "tablespoonful", "tbsps", "tbs", "tb", "tbl"],
    "fractions",
  ),
  "fl oz": volume(CUP_ML / 8, "fl oz", ["fluid ounce", "floz"], "fractions"),
  cup: volume(CUP_ML, "cups", ["cupful", "c"], "fractions"),
  "label cup": volume(LABEL_CUP_ML, "label cups", [], "fractions"),
  pint: volume(CUP_ML * 2, "pints", ["pt"], "fractions"),
  quart: volume(CUP_ML * 4, "quarts", ["qt"], "fractions"),
  gallon: volume(ML_PER_GALLON, "gallons", ["gal"], "fractions"),
} as const satisfies Record<string, MeasureShape>;

/** A measure's name as it is stored and shown: "g", "cup", "fl oz" … */
export type MeasureName = keyof typeof MEASURES;
export type Measure = MeasureShape & { readonly name: MeasureName };

const byWord = new Map<string, Measure>();
for (const name of Object.keys(MEASURES).filter(isMeasureName)) {
  const measure: Measure = { ...MEASURES[name], name };
  for (const word of [name, measure.plural, ...measure.words]) byWord.set(word, measure);
}

/** Narrows a unit's name to a measure's own name; spellings such as "cups" are not names. */
export function isMeasureName(word: string): word is MeasureName {
  return Object.hasOwn(MEASURES, word);
}

/**
 * The measure a word stands for ("Tablespoons", "tbsp.", "fl. oz"), or undefined. A lone capital T
 * is a tablespoon and a small t a teaspoon (common practice in US recipes, no source).
 */
export function measureOf(word: string): Measure | undefined {
  if (word.trim() === "T") return byWord.get("tbsp");
  const plain = word.trim().toLowerCase().replaceAll(".", "").replaceAll(/\s+/g, " ");
  return byWord.get(plain) ?? (plain.length > 2 ? byWord.get(plain.replace(/s$/, "")) : undefined);
}

/**
 * An amount of one measure in another of the same kind; undefined when one is a weight and the other
 * a volume, since that takes a food's density. `convert(1, "lb", "g")` is 453.59237.
 */
export function convert(amount: number, from: MeasureName, to: MeasureName): number | undefined {
  if (MEASURES[from].kind !== MEASURES[to].kind) return undefined;
  return (amount * MEASURES[from].size) / MEASURES[to].size;
}

function weight(
  size: number,
  plural: string,
  words: readonly string[],
  writtenIn: MeasureShape["writtenIn"],
): MeasureShape {
  return { kind: "weight", size, plural, words, writtenIn };
}

function volume(
  size: number,
  plural: string,
  words: readonly string[],
  writtenIn: MeasureShape["writtenIn"],
): MeasureShape {
  return { kind: "volume", size, plural, words, writtenIn };
}
