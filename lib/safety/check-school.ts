import type { Allergen, Trait } from "#lib/catalog/index.ts";
import { holdsOf, type Holds } from "./allergens/holds.ts";
import { allergenWord } from "./allergens/law-lists.ts";
import type { BoxItem, BoxLunch } from "./box.ts";
import { findingKey, type Finding } from "./finding.ts";
import { ruleHolds, type SchoolRule } from "./school-rule.ts";
import { listOf, sentence, verb } from "./words.ts";

const TRAIT_WORDS: Readonly<Record<Trait, string>> = {
  nuts: "nuts",
  seeds: "seeds",
  fizzy: "fizzy drinks",
  "in-a-can": "cans",
  "in-glass": "glass",
  sweets: "sweets",
  sticky: "sticky food",
  melts: "what melts",
  messy: "messy food",
  "needs-spoon": "what needs a spoon",
  "needs-fork": "what needs a fork",
  "served-warm": "warm food",
  "shop-bought": "what is not home-made",
  "strong-smell": "strong smells",
  "browns-when-cut": "what browns",
  crushes: "what crushes",
};

/** A trait as a rule names it: "what is not home-made". */
export function traitWord(trait: Trait): string {
  return TRAIT_WORDS[trait];
}

/** The trick that makes any food a warm one. */
const FLASK = "food-flask";

/** The rules in force that day against each item; each finding names its rule and the mark that was hit. */
export function checkSchool(lunch: BoxLunch, rules: readonly SchoolRule[]): readonly Finding[] {
  return rules
    .filter((rule) => ruleHolds(rule, lunch.date))
    .flatMap((rule) => [
      ...broken(
        rule,
        lunch.items.filter((item) => marksHit(rule, item).length > 0),
      ),
      ...toRead(
        rule,
        lunch.items.filter((item) => marksHit(rule, item).length === 0),
      ),
    ]);
}

function marksHit(rule: SchoolRule, item: BoxItem): string[] {
  const traits = new Set<Trait>([...item.food.traits, ...(item.product?.traits ?? [])]);
  if (item.trickIds.includes(FLASK)) traits.add("served-warm");
  return [
    ...(rule.foods.includes(item.food.id) ? [item.food.name] : []),
    ...rule.traits.filter((trait) => traits.has(trait)).map(traitWord),
    ...rule.allergens.filter((one) => holdsOf(item, one) === "holds").map(allergenWord),
  ];
}

function broken(rule: SchoolRule, items: readonly BoxItem[]): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food }) => food.name);
  const marks = items.flatMap((item) => marksHit(rule, item));
  return [
    {
      ...aboutRule("school", rule, items),
      level: "stop",
      sentence: `${sentence(listOf(names))} ${verb(names, "does", "do")} not fit “${rule.name}” (${listOf(marks)}).`,
      remedy: "Let another food step in, or ask the school.",
    },
  ];
}

function toRead(rule: SchoolRule, items: readonly BoxItem[]): Finding[] {
  const standing = (how: Holds): Standing => {
    const has = (item: BoxItem, one: Allergen): boolean => holdsOf(item, one) === how;
    return {
      words: rule.allergens.filter((one) => items.some((item) => has(item, one))).map(allergenWord),
      items: items.filter((item) => rule.allergens.some((one) => has(item, one))),
    };
  };
  return [
    ...unread(rule, standing("some-makes")),
    ...named(rule, standing("named")),
    ...silent(rule, standing("label-silent")),
  ];
}

type Standing = { readonly words: readonly string[]; readonly items: readonly BoxItem[] };

function unread(rule: SchoolRule, { words, items }: Standing): Finding[] {
  if (items.length === 0) return [];
  return [
    {
      ...aboutRule("school-label", rule, items),
      level: "look",
      sentence: `Check the label for ${listOf(words)}: ${listOf(items.map(({ food }) => food.name))}. Some makes would not fit “${rule.name}”.`,
      remedy: "Read it each time you buy; makers change recipes.",
    },
  ];
}

function named(rule: SchoolRule, { words, items }: Standing): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food, product }) => product?.name ?? food.name);
  return [
    {
      ...aboutRule("school-named", rule, items),
      level: "look",
      sentence: `The ${verb(names, "name", "names")} of ${listOf(names)} ${verb(names, "speaks", "speak")} of ${listOf(words)}, the record in the Larder does not. It may not fit “${rule.name}”.`,
      remedy: "Read the label, then tick it on the food’s page, or give the food another name.",
    },
  ];
}

function silent(rule: SchoolRule, { words, items }: Standing): Finding[] {
  if (items.length === 0) return [];
  const names = items.map(({ food, product }) => product?.name ?? food.name);
  return [
    {
      ...aboutRule("school-silent", rule, items),
      level: "note",
      sentence: `Some makes of these hold ${listOf(words)}; the labels on record do not list it: ${listOf(names)}.`,
      remedy: `For “${rule.name}”, read the label again when the pack is new.`,
    },
  ];
}

function aboutRule(
  about: string,
  rule: SchoolRule,
  items: readonly BoxItem[],
): Pick<Finding, "key" | "kind" | "sources" | "itemIds" | "mayKeep"> {
  return {
    key: findingKey(
      `${about}:${rule.name}`,
      items.map(({ food }) => food.id),
    ),
    kind: "school",
    sources: ["own-school"],
    itemIds: items.map(({ id }) => id),
    mayKeep: true,
  };
}
