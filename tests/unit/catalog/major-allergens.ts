import type { Allergen } from "#lib/catalog/index.ts";

/** The US nine (FALCPA 2004, FASTER Act 2021) as the public derivations write them. */
const US_NINE: Readonly<Record<string, Allergen>> = {
  milk: "milk",
  egg: "egg",
  fish: "fish",
  "crustacean shellfish": "crustacean",
  "tree nuts": "tree-nut",
  peanuts: "peanut",
  wheat: "wheat",
  soy: "soy",
  sesame: "sesame",
};

/** Tags of a list as the derivations print it: "egg|tree nuts"; "none" has none. */
export function majorAllergensOf(list: string): Allergen[] {
  return list.split("|").flatMap((word) => US_NINE[word] ?? []);
}

export const MAJOR_ALLERGENS: ReadonlySet<Allergen> = new Set(Object.values(US_NINE));
