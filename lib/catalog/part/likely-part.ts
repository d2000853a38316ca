import type { Food } from "../food.ts";
import type { Part } from "../vocabulary.ts";

/**
 * The part a food most likely plays in a lunch: the first of its parts, in its own order, that the
 * lunch still lacks, else its first. Undefined for a food without parts.
 */
export function likelyPart(
  food: Pick<Food, "parts">,
  taken: readonly Part[] = [],
): Part | undefined {
  return food.parts.find((part) => !taken.includes(part)) ?? food.parts[0];
}
