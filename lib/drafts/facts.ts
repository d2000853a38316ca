import { hash32, isPresent } from "#lib/base/index.ts";
import type { EpisodeRecords, ItemRecord, LunchRecord, ReactionRecord } from "./records.ts";
import { listOf, tidy, weekdayName } from "./words.ts";

/** One thing that may be told, in a full sentence, with the ids of the records it rests on. */
export interface Fact {
  readonly id: string;
  readonly kind: "disclosure" | "theme" | "lunch" | "first" | "return" | "finish" | "quote";
  readonly refs: readonly string[];
  readonly text: string;
  /** Changes when what the fact tells changes. */
  readonly hash: string;
}

/** Every fact of an episode, disclosures first. A scrapped item gives none; a planned one only before the shoot. */
export function factsOf(records: EpisodeRecords): Fact[] {
  const theme = fact("theme", [records.id], `This week's theme is ${tidy(records.theme)}.`);
  return [
    ...disclosures(records),
    theme,
    ...records.lunches.flatMap((lunch) => lunchFacts(records, lunch)),
  ];
}

function disclosures(records: EpisodeRecords): Fact[] {
  return records.products
    .map(({ id, name, provenance }) => {
      const shown = tidy(name);
      if (provenance === "gifted")
        return fact("disclosure", [id], `We were given ${shown} for free.`);
      if (provenance === "sponsored")
        return fact("disclosure", [id], `This is an ad: we were paid to show ${shown}.`);
      if (provenance === "affiliate")
        return fact("disclosure", [id], `We earn money when you buy ${shown} by our link.`);
      return undefined;
    })
    .filter(isPresent);
}

function lunchFacts(records: EpisodeRecords, lunch: LunchRecord): Fact[] {
  const before = records.today < records.shootDay;
  const told = lunch.items.filter((item) => isTold(item, before));
  if (told.length === 0) return [];
  const foods = listOf(told.map((item) => tidy(item.food)));
  const verb = before ? "we will pack" : "we packed";
  const line = `On ${weekdayName(lunch.day)} ${verb} ${foods}.`;
  return [
    fact("lunch", [lunch.id, ...told.map((item) => item.id)], line),
    ...told.map((item) => appearance(item, before)).filter(isPresent),
    ...(before ? [] : told.flatMap((item) => reactionFacts(records, item))),
  ];
}

function isTold(item: ItemRecord, before: boolean): boolean {
  if (item.fate === "planned") return before;
  return item.fate === "packed" || item.fate === "swapped";
}

function appearance(item: ItemRecord, before: boolean): Fact | undefined {
  const food = tidy(item.food);
  if (item.weeksSince === null) {
    const was = before ? "It will be" : "It was";
    return fact("first", [item.id], `${was} the first time on the show for ${food}.`);
  }
  if (item.weeksSince < 2) return undefined;
  const bring = before ? "we will bring" : "we brought";
  return fact("return", [item.id], `After ${item.weeksSince} weeks away, ${bring} back ${food}.`);
}

function reactionFacts(records: EpisodeRecords, item: ItemRecord): Fact[] {
  return records.reactions
    .filter((reaction) => reaction.itemId === item.id)
    .flatMap((reaction) => oneReaction(records, item, reaction));
}

function oneReaction(records: EpisodeRecords, item: ItemRecord, reaction: ReactionRecord): Fact[] {
  const child = records.children.find((one) => one.id === reaction.childId);
  if (!child) return [];
  const name = tidy(child.onScreenName);
  const food = tidy(item.food);
  const refs = [reaction.id, item.id, child.id];
  const quote = tidy(reaction.quote ?? "");
  return [
    reaction.quarters === 4
      ? fact("finish", refs, `${name} finished all of the ${food}.`)
      : undefined,
    quote ? fact("quote", refs, `${name} on the ${food}: “${quote}”`) : undefined,
  ].filter(isPresent);
}

function fact(kind: Fact["kind"], refs: readonly string[], text: string): Fact {
  return { id: [kind, ...refs].join(":"), kind, refs, text, hash: String(hash32(text)) };
}
