import { MONTHS } from "#lib/calendar/index.ts";
import {
  ALLERGENS,
  COLOURS,
  FOOD_GROUPS,
  FORMS,
  HOLDINGS,
  PARTS,
  PATTERNS,
  TRAITS,
} from "#lib/catalog/index.ts";

type Options = readonly (readonly [value: string, words: string])[];

/** The words of the catalogue as a form offers them. */
export const GROUP_OPTIONS: Options = plain(FOOD_GROUPS);
export const PART_OPTIONS: Options = plain(PARTS);
export const COLOUR_OPTIONS: Options = plain(COLOURS);
export const PATTERN_OPTIONS: Options = plain(PATTERNS);
export const FORM_OPTIONS: Options = plain(FORMS);
export const HOLDING_OPTIONS: Options = HOLDINGS.map((one) => [
  one,
  one === "none" ? "neither hot nor cold" : one === "either" ? "hot or cold" : one,
]);
export const ALLERGEN_OPTIONS: Options = plain(ALLERGENS);
export const TRAIT_OPTIONS: Options = plain(TRAITS);
export const MONTH_OPTIONS: Options = MONTHS.map((name, index) => [
  String(index + 1),
  name.slice(0, 3),
]);

function plain(words: readonly string[]): Options {
  return words.map((word) => [word, word.replaceAll("-", " ")]);
}
