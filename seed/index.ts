/** Seed: the reference catalogue of foods, families, tricks and theme ideas, with its sources. */
export {
  referenceFamilies,
  referenceFoods,
  referenceMotifs,
  referenceThemes,
  referenceTricks,
  type ReferenceFood,
} from "./load.ts";
export { type FoodSources, type ReferenceFamily, type ReferenceTheme } from "./schemas.ts";
export { CATALOGUE_VERSION } from "./version.ts";
export { referenceCatalogue } from "./catalogue.ts";
