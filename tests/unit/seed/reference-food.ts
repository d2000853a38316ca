import { referenceFoods } from "#seed/index.ts";
import type { Food } from "#lib/catalog/index.ts";

/** The reference food with that id; a test that names a food which is not there must fail. */
export function referenceFood(id: string): Food {
  const found = referenceFoods().find(({ food }) => food.id === id);
  if (!found) throw new Error(`The catalogue has no food ${id}.`);
  return found.food;
}
