import { z } from "zod";
import { Food, Trick } from "#lib/catalog/index.ts";
import familyRows from "./data/families.json" with { type: "json" };
import foodRows from "./data/foods.json" with { type: "json" };
import motifRows from "./data/motifs.json" with { type: "json" };
import defaultRow from "./data/source-defaults.json" with { type: "json" };
import themeRows from "./data/themes.json" with { type: "json" };
import trickRows from "./data/tricks.json" with { type: "json" };
import { FoodRow, FoodSources, Motif, ReferenceFamily, ReferenceTheme } from "./schemas.ts";

/** A reference food with the source of every one of its values. */
export type ReferenceFood = {
  readonly food: Food;
  readonly sources: FoodSources;
};

/** The reference foods, sorted as food guides group them. Throws when the data is malformed. */
export const referenceFoods: () => readonly ReferenceFood[] = once(() => {
  const defaults = FoodSources.parse(defaultRow);
  const rows = z.array(FoodRow).parse(foodRows);
  return rows.map(({ food, sources }) => ({ food, sources: { ...defaults, ...sources } }));
});

/** The families that the reference foods belong to, by id. */
export const referenceFamilies: () => readonly ReferenceFamily[] = once(() =>
  z.array(ReferenceFamily).parse(familyRows),
);

/** Cuts, cutter shapes, picks, containers and garnishes. */
export const referenceTricks: () => readonly Trick[] = once(() => z.array(Trick).parse(trickRows));

/** Invented theme ideas, spread over the year. */
export const referenceThemes: () => readonly ReferenceTheme[] = once(() =>
  z.array(ReferenceTheme).parse(themeRows),
);

/** Every motif that foods, tricks and themes may name, in alphabetical order. */
export const referenceMotifs: () => readonly string[] = once(() => z.array(Motif).parse(motifRows));

/** Parses on first use, since a page that shows no catalogue should not pay for it. */
function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => (made ??= { value: make() }).value;
}
