import { nounOf, trickPhrase, type Noun } from "../words/index.ts";
import type { DraftItem, DraftLunch, DraftReaction, EpisodeRecords } from "../records.ts";
import type { Tense } from "./fact.ts";

/**
 * How a lunch is told: done once its lid was shut, to come while its day has not passed. A day that
 * passed with its lid open is not told at all: nobody knows what was eaten.
 */
export function tenseOf(lunch: DraftLunch, { today }: EpisodeRecords): Tense | undefined {
  if (lunch.isPacked) return "did";
  return lunch.date >= today ? "will" : undefined;
}

/** The items that were in the tin, or will be; what was scrapped never is. */
export function toldItems(lunch: DraftLunch): DraftItem[] {
  return lunch.items.filter((item) =>
    lunch.isPacked
      ? item.fate === "packed" || item.fate === "stepped-in"
      : item.fate === "planned" || item.fate === "packed" || item.fate === "stepped-in",
  );
}

/** An item's food as a noun. */
export function itemNoun(item: DraftItem): Noun {
  return nounOf({ name: item.food, countUnit: item.countUnit, count: item.count });
}

/** Names that say how the food is cut. */
const CUT_NAMES = /\b(?:sticks|slices|strips|wedges|chunks|rings|balls|cubes|halves|florets)$/u;

/** "cucumber slices cut into stars": the food with its first trick, unless the name says a cut already. */
export function shownFood(item: DraftItem): string {
  const noun = itemNoun(item);
  const isCut = CUT_NAMES.test(item.food);
  const trick = item.tricks.find(
    (one) => !(isCut && one.kind === "cut") && !item.food.includes(one.name),
  );
  return trick ? `${noun.some} ${trickPhrase(trick)}` : noun.some;
}

/** Children that had a tin that day: everyone some item was for. */
export function tinsOf(lunch: DraftLunch, records: EpisodeRecords): EpisodeRecords["children"] {
  const items = toldItems(lunch);
  return records.children.filter((child) => items.some((item) => !item.notFor.includes(child.id)));
}

type Verdicts = ReadonlyMap<string, DraftReaction>;
const indexed = new WeakMap<EpisodeRecords["reactions"], Verdicts>();

/** What a child made of an item, if it was logged. Found by an index that is made once for the records. */
export function reactionOf(
  { reactions }: Pick<EpisodeRecords, "reactions">,
  itemId: string,
  childId: string,
): DraftReaction | undefined {
  const verdicts =
    indexed.get(reactions) ??
    new Map(reactions.map((one) => [`${one.itemId} ${one.childId}`, one] as const));
  indexed.set(reactions, verdicts);
  return verdicts.get(`${itemId} ${childId}`);
}
