import { z } from "zod";
import { SeasonWindow } from "#lib/calendar/index.ts";
import { Colour, FamilyId, Food, FoodGroup } from "#lib/catalog/index.ts";

/** A word a theme, a food or a trick evokes; the whole list stands in `data/motifs.json`. */
export const Motif = z.string().regex(/^[a-z][a-z-]*$/);

/** Kin among foods: apple slices, applesauce and apple butter are one family. */
export const ReferenceFamily = z.object({
  id: FamilyId,
  name: z.string().min(1).max(120),
  group: FoodGroup,
});
export type ReferenceFamily = z.infer<typeof ReferenceFamily>;

/** An idea for a theme week: words, colours and when in the year it fits. */
export const ReferenceTheme = z.object({
  id: z.string().regex(/^[a-z0-9][a-z0-9-]*$/),
  name: z.string().min(1).max(120),
  motifs: z.array(Motif).min(1),
  palette: z.array(Colour).min(1),
  season: SeasonWindow,
  note: z.string().max(300),
});
export type ReferenceTheme = z.infer<typeof ReferenceTheme>;

/** Where each value of a food comes from: one sentence for each of its fields. */
export const FoodSources = z.record(Food.keyof(), z.string().min(1));
export type FoodSources = z.infer<typeof FoodSources>;

/** A row of `data/foods.json`: sources are written out only where they differ from the defaults. */
export const FoodRow = z.object({
  food: Food,
  sources: z.partialRecord(Food.keyof(), z.string().min(1)),
});
