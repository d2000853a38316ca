import type { Allergen } from "#lib/catalog/index.ts";
import { isFor, type BoxChild, type BoxLunch } from "../box.ts";
import { findingKey, type Finding } from "../finding.ts";
import { listOf, sentence } from "../words.ts";
import { holdsOf } from "./holds.ts";
import { allergenWord } from "./law-lists.ts";

/**
 * Where two children differ: something one of them must not have goes into another's box, so boards,
 * knives, hands and boxes may carry it over.
 */
export function checkCrossContact(
  lunch: BoxLunch,
  children: readonly BoxChild[],
): readonly Finding[] {
  return children.flatMap((child) =>
    child.avoidances.flatMap((avoidance) => {
      if (!("allergen" in avoidance)) return [];
      const { allergen, severity } = avoidance;
      if (severity !== "severe" && severity !== "allergy") return [];
      return apart(lunch, child, children, allergen, severity === "severe");
    }),
  );
}

function apart(
  lunch: BoxLunch,
  child: BoxChild,
  children: readonly BoxChild[],
  allergen: Allergen,
  isSevere: boolean,
): Finding[] {
  const items = lunch.items.filter(
    (item) => !isFor(item, child) && holdsOf(item, allergen) === "holds",
  );
  if (items.length === 0) return [];
  const others = children.filter(
    (other) => other.id !== child.id && items.some((item) => isFor(item, other)),
  );
  if (others.length === 0) return [];
  return [
    {
      key: findingKey(
        `apart:${child.id}:${allergen}`,
        items.map(({ food }) => food.id),
      ),
      kind: "cross-contact",
      level: "look",
      sentence: `${sentence(listOf(items.map(({ food }) => food.name)))} for ${listOf(others.map(({ name }) => name))}: ${child.name} must not have ${allergenWord(allergen)}.`,
      remedy: `Pack ${child.name}’s box first and shut it; then another board, another knife, washed hands. No shared box or dip.`,
      sources: ["cross-contact"],
      itemIds: items.map(({ id }) => id),
      mayKeep: !isSevere,
    },
  ];
}
