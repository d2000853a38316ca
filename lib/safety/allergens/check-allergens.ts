import type { Allergen } from "#lib/catalog/index.ts";
import { isFor, type BoxChild, type BoxItem, type BoxLunch } from "../box.ts";
import type { Severity } from "../child.ts";
import { findingKey, type Finding } from "../finding.ts";
import { listOf, sentence, verb } from "../words.ts";
import { holdsOf, type Holds } from "./holds.ts";
import { allergenWord, listsNaming } from "./law-lists.ts";

/** What each child avoids, against each item meant for that child. One finding a child and reason. */
export function checkAllergens(lunch: BoxLunch, children: readonly BoxChild[]): readonly Finding[] {
  return children.flatMap((child) =>
    child.avoidances.flatMap((avoidance) => {
      if ("allergen" in avoidance) {
        const { allergen, severity } = avoidance;
        return [
          ...allergenFindings(lunch, child, allergen, severity),
          ...(allergen === "tree-nut" ? coconutNote(lunch, child, severity) : []),
        ];
      }
      const items = lunch.items.filter(
        ({ food }) =>
          ("food" in avoidance && food.id === avoidance.food) ||
          ("family" in avoidance && food.family === avoidance.family),
      );
      return foodFindings(
        items.filter((item) => isFor(item, child)),
        child,
        avoidance.severity,
      );
    }),
  );
}

function allergenFindings(
  lunch: BoxLunch,
  child: BoxChild,
  allergen: Allergen,
  severity: Severity,
): Finding[] {
  const mine = lunch.items.filter((item) => isFor(item, child));
  const those = (how: Holds): BoxItem[] => mine.filter((item) => holdsOf(item, allergen) === how);
  const what = { child, allergen, severity };
  return [
    ...holding(those("holds"), what),
    ...(severity === "severe" || severity === "allergy"
      ? [
          ...labelled(those("some-makes"), what),
          ...named(those("named"), what),
          ...silent(those("label-silent"), what),
        ]
      : []),
  ];
}

type What = {
  readonly child: BoxChild;
  readonly allergen: Allergen;
  readonly severity: Severity;
};

function holding(items: readonly BoxItem[], { child, allergen, severity }: What): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food }) => food.name);
  const word = allergenWord(allergen);
  const isHard = severity === "severe" || severity === "allergy";
  const rather = severity === "dislike" ? "does not like" : isHard ? "must not have" : "avoids";
  return [
    {
      ...findingOf(`holds:${child.id}:${allergen}`, items),
      kind: isHard ? "allergen" : "avoidance",
      level: isHard ? "stop" : severity === "avoid" ? "look" : "note",
      sentence: `${sentence(listOf(names))} ${verb(names, "holds", "hold")} ${word}, which ${child.name} ${rather}.`,
      remedy: isHard
        ? `Take it out of ${child.name}’s box, or let another food step in.`
        : `Another food can step in for ${child.name}.`,
      sources: ["own-record", ...listsNaming(allergen)],
      // An allergy is no matter of taste: only the food or the child's record settles it.
      mayKeep: !isHard,
    },
  ];
}

function labelled(items: readonly BoxItem[], { child, allergen, severity }: What): Finding[] {
  if (items.length === 0) return [];
  const word = allergenWord(allergen);
  return [
    {
      ...findingOf(`label:${child.id}:${allergen}`, items),
      kind: "allergen",
      level: "look",
      sentence: `Check the label for ${word}: ${listOf(items.map(({ food }) => food.name))}. Some makes hold it, and ${child.name} must not have it.`,
      remedy: "Read it each time you buy; makers change recipes.",
      sources: ["us-may-contain", ...listsNaming(allergen)],
      mayKeep: severity !== "severe",
    },
  ];
}

function named(items: readonly BoxItem[], { child, allergen, severity }: What): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food, product }) => product?.name ?? food.name);
  return [
    {
      ...findingOf(`named:${child.id}:${allergen}`, items),
      kind: "allergen",
      level: "look",
      sentence: `The ${verb(names, "name", "names")} of ${listOf(names)} ${verb(names, "speaks", "speak")} of ${allergenWord(allergen)}, the record in the Larder does not, and ${child.name} must not have it.`,
      remedy: "Read the label, then tick it on the food’s page, or give the food another name.",
      sources: ["us-may-contain", ...listsNaming(allergen)],
      mayKeep: severity !== "severe",
    },
  ];
}

function silent(items: readonly BoxItem[], { child, allergen, severity }: What): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food, product }) => product?.name ?? food.name);
  return [
    {
      ...findingOf(`silent:${child.id}:${allergen}`, items),
      kind: "allergen",
      level: "note",
      sentence: `Some makes of these hold ${allergenWord(allergen)}; the labels on record do not list it: ${listOf(names)}.`,
      remedy: `For ${child.name}, read the label again when the pack is new.`,
      sources: ["us-may-contain", ...listsNaming(allergen)],
      mayKeep: severity !== "severe",
    },
  ];
}

/** Coconut left the US tree nuts in 2025; a child with a tree-nut allergy may still have to avoid it. */
function coconutNote(lunch: BoxLunch, child: BoxChild, severity: Severity): Finding[] {
  const items = lunch.items.filter(
    (item) => isFor(item, child) && holdsOf(item, "coconut") === "holds",
  );
  if (items.length === 0 || (severity !== "severe" && severity !== "allergy")) return [];
  return [
    {
      ...findingOf(`coconut:${child.id}`, items),
      kind: "allergen",
      level: "note",
      sentence: `${sentence(listOf(items.map(({ food }) => food.name)))}: coconut is a tag of its own, no longer a tree nut in US law. Ask ${child.name}’s doctor whether it counts.`,
      remedy: "Add coconut to the child’s record if it does.",
      sources: ["us-tree-nuts"],
      mayKeep: true,
    },
  ];
}

function foodFindings(items: readonly BoxItem[], child: BoxChild, severity: Severity): Finding[] {
  if (items.length === 0) return [];
  const isHard = severity === "severe" || severity === "allergy";
  const rather = severity === "dislike" ? "does not like" : isHard ? "must not have" : "avoids";
  return [
    {
      ...findingOf(`food:${child.id}`, items),
      kind: isHard ? "allergen" : "avoidance",
      level: isHard ? "stop" : severity === "avoid" ? "look" : "note",
      sentence: `${child.name} ${rather} ${listOf(items.map(({ food }) => food.name))}.`,
      remedy: `Another food can step in for ${child.name}.`,
      sources: ["own-record"],
      mayKeep: !isHard,
    },
  ];
}

function findingOf(about: string, items: readonly BoxItem[]): Pick<Finding, "key" | "itemIds"> {
  return {
    key: findingKey(
      about,
      items.map(({ food }) => food.id),
    ),
    itemIds: items.map(({ id }) => id),
  };
}
