import type { Food } from "../food.ts";
import type { Allergen, Part } from "../vocabulary.ts";

type StandInFood = Pick<
  Food,
  "id" | "name" | "family" | "group" | "parts" | "allergens" | "maybeAllergens" | "colours" | "form"
>;

/** A food that can take another's place, with what speaks for it and what to watch. */
export type StandIn<F extends StandInFood> = {
  readonly food: F;
  readonly isSameFamily: boolean;
  readonly isSameGroup: boolean;
  readonly sharesColour: boolean;
  /** Allergens, certain or possible, that it brings and the other did not. Check its label. */
  readonly newAllergens: readonly Allergen[];
};

/**
 * Foods that can stand in for one that is out: they must be able to play its part (`part`, or any of
 * its parts). Those that bring no new allergen come first, then the same family, group and colour,
 * then by name. Whether a child may have it is for the safety rules to say, not for this list.
 */
export function standInsFor<F extends StandInFood>(
  food: StandInFood,
  foods: readonly F[],
  part?: Part,
): StandIn<F>[] {
  const parts = part === undefined ? food.parts : [part];
  const had = new Set([...food.allergens, ...food.maybeAllergens]);
  return foods
    .filter((other) => other.id !== food.id && other.parts.some((own) => parts.includes(own)))
    .filter((other) => other.family === food.family || other.group === food.group)
    .map((other) => ({
      food: other,
      isSameFamily: other.family === food.family,
      isSameGroup: other.group === food.group,
      sharesColour: other.colours.some((colour) => food.colours.includes(colour)),
      newAllergens: [...new Set([...other.allergens, ...other.maybeAllergens])].filter(
        (allergen) => !had.has(allergen),
      ),
    }))
    .sort(
      (left, right) => rankOf(right) - rankOf(left) || (left.food.name < right.food.name ? -1 : 1),
    );
}

function rankOf(standIn: StandIn<StandInFood>): number {
  const { newAllergens, isSameFamily, isSameGroup, sharesColour } = standIn;
  return (
    (newAllergens.length === 0 ? 8 : 0) +
    (isSameFamily ? 4 : 0) +
    (isSameGroup ? 2 : 0) +
    (sharesColour ? 1 : 0)
  );
}
