import type { Catalogue } from "#lib/use-cases/load-catalogue.ts";
import { referenceFamilies, referenceFoods, referenceThemes, referenceTricks } from "./load.ts";
import { CATALOGUE_VERSION } from "./version.ts";

/** The whole reference catalogue, as it is loaded into the Larder. */
export function referenceCatalogue(): Catalogue {
  return {
    version: CATALOGUE_VERSION,
    foods: referenceFoods(),
    families: referenceFamilies(),
    tricks: referenceTricks(),
    themes: referenceThemes(),
  };
}
