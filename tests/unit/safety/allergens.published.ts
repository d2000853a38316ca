import type { Allergen } from "#lib/catalog/index.ts";

/** FALCPA 2004 with the FASTER Act 2021, as the FDA prints the list. */
export const US_LIST: readonly Allergen[] = [
  "milk",
  "egg",
  "fish",
  "crustacean",
  "tree-nut",
  "wheat",
  "peanut",
  "soy",
  "sesame",
];

/** Regulation (EU) 1169/2011, Annex II, points 1 to 14 in its order, as tags. */
export const EU_LIST: readonly (readonly Allergen[])[] = [
  ["wheat", "rye", "barley", "oats"],
  ["crustacean"],
  ["egg"],
  ["fish"],
  ["peanut"],
  ["soy"],
  ["milk"],
  ["tree-nut"],
  ["celery"],
  ["mustard"],
  ["sesame"],
  ["sulphites"],
  ["lupin"],
  ["mollusc"],
];

/** FDA, Questions and Answers Edition 5 (6 January 2025): removed from the tree nuts. */
export const NO_LONGER_TREE_NUTS: readonly string[] = ["shredded-coconut", "coconut-water"];
/** Same edition: among the twelve that stay. */
export const TREE_NUTS: readonly string[] = [
  "almonds",
  "cashews",
  "walnuts",
  "pecans",
  "pistachios",
  "hazelnuts",
  "macadamia-nuts",
  "pine-nuts",
];
