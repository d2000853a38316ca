import { groupBy } from "#lib/base/index.ts";
import { isFor, type BoxChild, type BoxItem, type BoxLunch } from "../box.ts";
import { findingKey, type Finding } from "../finding.ts";
import { listOf, sentence, verb } from "../words.ts";
import { guidanceFor, type ShapeGuidance } from "./guidance.ts";

/** Past the published ages a quiet note stays until here (common practice, no source). */
const NOTE_UNDER_MONTHS = 72;
/** Shapes that the quiet note speaks of: the ones that stop a windpipe whole. */
const NOTED: ReadonlySet<string> = new Set([
  "round",
  "sausage",
  "whole-nut",
  "hard-sweet",
  "popcorn",
]);

type Met = { readonly item: BoxItem; readonly guidance: ShapeGuidance };

/**
 * Shapes that published guidance speaks of, for each child under the stated age. Where no birth month is
 * on record the guidance is told as a condition. A trick that does what is asked settles it.
 */
export function checkChoking(lunch: BoxLunch, children: readonly BoxChild[]): readonly Finding[] {
  const met = lunch.items.flatMap((item): Met[] => {
    const guidance = guidanceFor(item.food);
    if (!guidance || item.trickIds.some((trick) => guidance.doneBy.includes(trick))) return [];
    return [{ item, guidance }];
  });
  if (met.length === 0) return [];
  return children.flatMap((child) => {
    const mine = met.filter(({ item }) => isFor(item, child));
    const { ageMonths } = child;
    if (ageMonths === null) return unknownAge(mine, child);
    const young = mine.filter(({ guidance }) => ageMonths < guidance.underMonths);
    return [
      ...[...groupBy(young, ({ guidance }) => guidance.id).values()].flatMap((group) =>
        underAge(group, child, ageMonths),
      ),
      ...pastAge(
        mine.filter(({ guidance }) => ageMonths >= guidance.underMonths),
        child,
        ageMonths,
      ),
    ];
  });
}

function underAge(met: readonly Met[], child: BoxChild, ageMonths: number): Finding[] {
  const [first] = met;
  if (!first) return [];
  const { guidance } = first;
  const years = guidance.underMonths / 12;
  return [
    {
      ...aboutShape(`${guidance.id}:${child.id}`, met),
      level: guidance.isNotServed ? "stop" : "look",
      sentence: `${sentence(listOf(namesOf(met)))} for ${child.name}, who is ${ageWords(ageMonths)}: guidance under ${years} speaks of choking.`,
      remedy: `${guidance.todo}. Sit down to eat, with a grown-up near.`,
      sources: guidance.sources,
    },
  ];
}

function unknownAge(met: readonly Met[], child: BoxChild): Finding[] {
  if (met.length === 0) return [];
  return [
    {
      ...aboutShape(`age:${child.id}`, met),
      level: "note",
      sentence: `No birth month is on record for ${child.name}. Under 5, guidance on choking speaks of ${listOf(namesOf(met))}.`,
      remedy: "Enter the birth month in the Series bible.",
      sources: [...new Set(met.flatMap(({ guidance }) => guidance.sources))],
    },
  ];
}

function pastAge(met: readonly Met[], child: BoxChild, ageMonths: number): Finding[] {
  const noted = met.filter(({ guidance }) => NOTED.has(guidance.id));
  if (noted.length === 0 || ageMonths >= NOTE_UNDER_MONTHS) return [];
  const names = namesOf(noted);
  return [
    {
      ...aboutShape(`older:${child.id}`, noted),
      level: "note",
      sentence: `${child.name} is ${ageWords(ageMonths)}, past the published age for ${listOf(names)}: ${verb(names, "it is", "they are")} for sitting down and chewing.`,
      remedy: "",
      sources: ["choking-older", ...new Set(noted.flatMap(({ guidance }) => guidance.sources))],
    },
  ];
}

function aboutShape(
  about: string,
  met: readonly Met[],
): Pick<Finding, "key" | "kind" | "itemIds" | "mayKeep"> {
  return {
    key: findingKey(
      `choking:${about}`,
      met.map(({ item }) => item.food.id),
    ),
    kind: "choking",
    itemIds: met.map(({ item }) => item.id),
    mayKeep: true,
  };
}

function namesOf(met: readonly Met[]): string[] {
  return met.map(({ item }) => item.food.name);
}

function ageWords(months: number): string {
  return months < 24 ? `${months} months` : String(Math.floor(months / 12));
}
