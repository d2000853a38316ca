import { ALLERGENS, TRAITS, type Allergen, type Trait } from "#lib/catalog/index.ts";
import { WEEKDAYS } from "#lib/calendar/index.ts";
import type { Severity } from "#lib/safety/index.ts";

const ALLERGEN_WORDS: Readonly<Record<Allergen, string>> = {
  ...{ milk: "Milk", egg: "Egg", fish: "Fish", crustacean: "Crustaceans", mollusc: "Molluscs" },
  ...{ "tree-nut": "Tree nuts", peanut: "Peanut", wheat: "Wheat", rye: "Rye", barley: "Barley" },
  ...{ oats: "Oats", soy: "Soy", sesame: "Sesame", celery: "Celery", mustard: "Mustard" },
  ...{ sulphites: "Sulphites", lupin: "Lupin", coconut: "Coconut" },
};

const TRAIT_WORDS: Readonly<Record<Trait, string>> = {
  ...{ nuts: "Nuts", seeds: "Seeds", fizzy: "Fizzy", "in-a-can": "In a can", sweets: "Sweets" },
  ...{ "in-glass": "In glass", sticky: "Sticky", melts: "Melts", messy: "Messy" },
  ...{ "needs-spoon": "Needs a spoon", "needs-fork": "Needs a fork" },
  ...{ "served-warm": "Served warm", "shop-bought": "Shop-bought", crushes: "Crushes easily" },
  ...{ "strong-smell": "Strong smell", "browns-when-cut": "Browns when cut" },
};

const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  severe: "Severe allergy",
  allergy: "Allergy",
  avoid: "Avoid",
  dislike: "Would rather not",
};

/** The cereals that the EU list names together for their gluten. */
export const GLUTEN_CEREALS = ["wheat", "rye", "barley", "oats"] as const satisfies Allergen[];

/** An allergen as a page names it. */
export function allergenWords(allergen: Allergen): string {
  return ALLERGEN_WORDS[allergen];
}

/** A mark of a food as a page names it. */
export function traitWords(trait: Trait): string {
  return TRAIT_WORDS[trait];
}

/** A severity as a page names it. */
export function severityWords(severity: Severity): string {
  return SEVERITY_WORDS[severity];
}

/** Every allergen to choose from, with its words. */
export const ALLERGEN_OPTIONS = ALLERGENS.map((one) => [one, ALLERGEN_WORDS[one]] as const);

/** Every mark of a food to choose from, with its words. */
export const TRAIT_OPTIONS = TRAITS.map((one) => [one, TRAIT_WORDS[one]] as const);

/** Every severity to choose from, the gravest first, with its words. */
export const SEVERITY_OPTIONS = (["severe", "allergy", "avoid", "dislike"] as const).map(
  (one) => [one, SEVERITY_WORDS[one]] as const,
);

/** The weekdays to choose from, Monday "1". */
export const WEEKDAY_OPTIONS = WEEKDAYS.map((name, index) => [String(index + 1), name] as const);

/** "Mon, Tue, Fri"; "Mon–Fri" for days in a row; "every day" for all seven. */
export function weekdayWords(days: readonly number[]): string {
  if (days.length === 7) return "every day";
  const names = days.map((day) => WEEKDAYS[day - 1] ?? "");
  const isRow = days.length > 2 && days.every((day, index) => day === (days[0] ?? 0) + index);
  return isRow ? `${names[0] ?? ""}–${names.at(-1) ?? ""}` : names.join(", ");
}
