import type { Allergen } from "#lib/catalog/index.ts";

type LawEntry = { readonly name: string; readonly tags: readonly Allergen[] };

/**
 * The nine major food allergens of US law (FALCPA 2004, FASTER Act 2021; list as printed by the FDA).
 * Peanuts stand apart from tree nuts; coconut left the tree nuts in January 2025 (Q&A Edition 5).
 */
export const US_NINE: readonly LawEntry[] = [
  { name: "milk", tags: ["milk"] },
  { name: "egg", tags: ["egg"] },
  { name: "fish", tags: ["fish"] },
  { name: "Crustacean shellfish", tags: ["crustacean"] },
  { name: "tree nuts", tags: ["tree-nut"] },
  { name: "wheat", tags: ["wheat"] },
  { name: "peanuts", tags: ["peanut"] },
  { name: "soybeans", tags: ["soy"] },
  { name: "sesame", tags: ["sesame"] },
];

/** The fourteen of Regulation (EU) 1169/2011, Annex II. Wheat is one of its gluten cereals, not all. */
export const EU_FOURTEEN: readonly LawEntry[] = [
  { name: "cereals containing gluten", tags: ["wheat", "rye", "barley", "oats"] },
  { name: "crustaceans", tags: ["crustacean"] },
  { name: "eggs", tags: ["egg"] },
  { name: "fish", tags: ["fish"] },
  { name: "peanuts", tags: ["peanut"] },
  { name: "soybeans", tags: ["soy"] },
  { name: "milk", tags: ["milk"] },
  { name: "nuts", tags: ["tree-nut"] },
  { name: "celery", tags: ["celery"] },
  { name: "mustard", tags: ["mustard"] },
  { name: "sesame seeds", tags: ["sesame"] },
  { name: "sulphur dioxide and sulphites", tags: ["sulphites"] },
  { name: "lupin", tags: ["lupin"] },
  { name: "molluscs", tags: ["mollusc"] },
];

/** Which law's list names a tag; coconut is on neither. */
export function listsNaming(allergen: Allergen): ("us-nine" | "eu-fourteen")[] {
  const isOn = (list: readonly LawEntry[]): boolean =>
    list.some(({ tags }) => tags.includes(allergen));
  return [
    ...(isOn(US_NINE) ? (["us-nine"] as const) : []),
    ...(isOn(EU_FOURTEEN) ? (["eu-fourteen"] as const) : []),
  ];
}

const WORDS: Readonly<Record<Allergen, string>> = {
  milk: "milk",
  egg: "egg",
  fish: "fish",
  crustacean: "crustaceans",
  mollusc: "molluscs",
  "tree-nut": "tree nuts",
  peanut: "peanuts",
  wheat: "wheat",
  rye: "rye",
  barley: "barley",
  oats: "oats",
  soy: "soy",
  sesame: "sesame",
  celery: "celery",
  mustard: "mustard",
  sulphites: "sulphites",
  lupin: "lupin",
  coconut: "coconut",
};

/** A tag as a sentence names it: "tree nuts". */
export function allergenWord(allergen: Allergen): string {
  return WORDS[allergen];
}
