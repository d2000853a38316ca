import { z } from "zod";
import type { Allergen, FamilyId, FoodId } from "#lib/catalog/index.ts";

/** How serious an avoidance is. Severe and allergy are hard; avoid is hard in planning; dislike never. */
export const Severity = z.enum(["severe", "allergy", "avoid", "dislike"]);
export type Severity = z.infer<typeof Severity>;

/** What a child must or would rather not eat. */
export type Avoidance = { readonly severity: Severity } & (
  { readonly allergen: Allergen } | { readonly food: FoodId } | { readonly family: FamilyId }
);

/** A child as the checks see one; `name` is the on-screen name. */
export type ChildProfile = {
  readonly id: string;
  readonly name: string;
  readonly avoidances: readonly Avoidance[];
};
