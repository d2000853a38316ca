import { groupBy, isPresent } from "#lib/base/index.ts";
import { monthName, partsOf, type Day } from "#lib/calendar/index.ts";
import { cleanRecords } from "../facts/clean-records.ts";
import { itemNoun, reactionOf, shownFood, tinsOf, toldItems } from "../facts/told-items.ts";
import { goodsFacts } from "../facts/goods-facts.ts";
import { lunchFacts } from "../facts/lunch-facts.ts";
import { verdictFacts } from "../facts/verdict-facts.ts";
import type { Composed } from "../compose.ts";
import type { DraftItem, DraftLunch, EpisodeRecords } from "../records.ts";
import { textOfLines, type Line, type Sentence } from "../text/sentences.ts";
import {
  capital,
  counted,
  isolated,
  kindOf,
  listOf,
  nounOf,
  numberWord,
  trickPhrase,
} from "../words/index.ts";

/** What a post is about: one food in several lunches, or the lunches themselves. */
export type BoardSubject =
  { readonly kind: "food"; readonly foodId: string } | { readonly kind: "lunches" };

/** A post of chosen lunches, sentence by sentence with the facts each tells. */
export type BoardPost = Composed & {
  /** Disclosures owed, which stand first. */
  readonly owed: readonly string[];
};

/**
 * A post from lunches of any weeks that were packed, oldest first; empty when none of them was. Titles
 * are the lunches' themes, by lunch.
 */
export function boardPost(
  records: EpisodeRecords,
  subject: BoardSubject,
  titles: ReadonlyMap<string, string>,
): BoardPost {
  const clean = cleanRecords(records);
  const lunches = clean.lunches
    .filter((lunch) => lunch.isPacked && toldItems(lunch).length > 0)
    .sort((one, other) => (one.date < other.date ? -1 : 1));
  const body =
    subject.kind === "food"
      ? foodLines(lunches, subject.foodId, clean, titles)
      : lunchLines(lunches, clean, titles);
  if (body.length === 0) return { lines: [], text: "", facts: [], owed: [] };
  const told = { ...clean, lunches };
  const goods = goodsFacts(told);
  const disclosed = goods.flatMap(({ id, detail }) =>
    detail.kind === "disclosure" ? [{ text: detail.text, facts: [id] }] : [],
  );
  const lines = [...disclosed.map((sentence) => [sentence]), ...body];
  const used = new Set(lines.flat().flatMap(({ facts }) => facts));
  const days = lunches.flatMap((lunch) => [
    ...lunchFacts(lunch, told),
    ...verdictFacts(lunch, told),
  ]);
  return {
    ...{ lines, text: textOfLines(lines), owed: disclosed.map(({ text }) => text) },
    facts: [...goods, ...days].filter(({ id }) => used.has(id)),
  };
}

function foodLines(
  lunches: readonly DraftLunch[],
  foodId: string,
  records: EpisodeRecords,
  titles: ReadonlyMap<string, string>,
): Line[] {
  const shown = lunches.flatMap((lunch) => {
    const item = toldItems(lunch).find((one) => one.foodId === foodId);
    return item ? [{ lunch, item }] : [];
  });
  const [first] = shown;
  if (!first) return [];
  const noun = kindOf({ name: first.item.food, countUnit: first.item.countUnit });
  const ways = new Set(shown.map(({ item }) => item.tricks.map(({ name }) => name).join()));
  const isDistinct = ways.size === shown.length;
  const opening =
    shown.length === 1
      ? `How we packed ${noun.bare}:`
      : `${capital(isDistinct ? `${numberWord(shown.length)} ways` : timesWord(shown.length))} we packed ${noun.bare}:`;
  const pronoun = noun.isMany ? "them" : "it";
  const tallies = records.children.flatMap((child) => {
    const text = childTally(shown, child, records, pronoun);
    return text === undefined
      ? []
      : [{ text, facts: shown.map(({ lunch }) => `verdict:${lunch.id}:${child.id}`) }];
  });
  return [
    [
      rests(
        opening,
        shown.map(({ lunch }) => lunch),
      ),
    ],
    [],
    ...shown.map(({ lunch, item }, index) =>
      [
        rests(`${index + 1}. ${wayText(lunch, item, records.today, titles)}`, [lunch]),
        verdictText(lunch, item, records),
      ].filter(isPresent),
    ),
    ...(tallies.length > 0 ? [[], tallies] : []),
  ];
}

/** "9 March, Moon Base: on flag picks, beside hummus and rye bread." */
function wayText(
  lunch: DraftLunch,
  item: DraftItem,
  today: Day,
  titles: ReadonlyMap<string, string>,
): string {
  const title = titles.get(lunch.id);
  const [trick] = item.tricks;
  const others = toldItems(lunch)
    .filter((one) => one.id !== item.id)
    .map((one) => nounOf({ name: one.food, countUnit: one.countUnit, count: one.count }).some);
  const beside = others.length > 0 ? `beside ${listOf(others)}` : "alone in the tin";
  const way = trick ? `${trickPhrase(trick)}, ${beside}` : beside;
  return `${dateText(lunch.date, today)}${title ? `, ${isolated(title)}` : ""}: ${way}.`;
}

const ATE = ["left", "ate a little of", "ate half of", "ate most of", "finished"] as const;

function verdictText(
  lunch: DraftLunch,
  item: DraftItem,
  records: EpisodeRecords,
): Sentence | undefined {
  const pronoun = itemNoun(item).isMany ? "them" : "it";
  const told = tinsOf(lunch, records).flatMap((child) => {
    const eaten = eatenOf(records, item, child.id);
    const verb = eaten === null ? undefined : ATE[eaten];
    if (verb === undefined) return [];
    const words = `${child.onScreenName} ${verb} ${pronoun}`;
    return [{ words, fact: `verdict:${lunch.id}:${child.id}` }];
  });
  if (told.length === 0) return undefined;
  const text = `${capital(told.map(({ words }) => words).join("; "))}.`;
  return { text, facts: told.map(({ fact }) => fact) };
}

/** "once", "twice", "three times" */
function timesWord(count: number): string {
  return count === 1 ? "once" : count === 2 ? "twice" : `${numberWord(count)} times`;
}

function childTally(
  shown: readonly { readonly item: DraftItem }[],
  child: EpisodeRecords["children"][number],
  records: EpisodeRecords,
  pronoun: string,
): string | undefined {
  const seen = shown
    .map(({ item }) => eatenOf(records, item, child.id))
    .filter((eaten) => eaten !== null);
  if (seen.length < 2) return undefined;
  const all = seen.filter((eaten) => eaten === 4).length;
  const name = capital(child.onScreenName);
  if (all === 0)
    return `${name} never finished ${pronoun} in ${counted(seen.length, "try", "tries")}.`;
  if (all === seen.length) {
    return `${name} finished ${pronoun} ${all === 2 ? "both times" : `all ${numberWord(all)} times`}.`;
  }
  return `${name} finished ${pronoun} ${timesWord(all)} in ${counted(seen.length, "try", "tries")}.`;
}

function lunchLines(
  lunches: readonly DraftLunch[],
  records: EpisodeRecords,
  titles: ReadonlyMap<string, string>,
): Line[] {
  const [first] = lunches;
  const last = lunches.at(-1);
  if (!first || !last) return [];
  const themes = [...groupBy(lunches, ({ id }) => titles.get(id) ?? "").keys()];
  const [theme = ""] = themes;
  const count = capital(counted(lunches.length, "lunch", "lunches"));
  const span =
    lunches.length === 1
      ? dateText(first.date, records.today)
      : `${dateText(first.date, records.today)} to ${dateText(last.date, records.today)}`;
  const opening =
    themes.length === 1 && theme !== ""
      ? `${count} from ${isolated(theme)}:`
      : `${count}, ${span}:`;
  return [
    [rests(opening, lunches)],
    [],
    ...lunches.map((lunch) => {
      const angle = lunch.angle ? `, “${isolated(lunch.angle)}”` : "";
      const foods = listOf(toldItems(lunch).map(shownFood));
      return [rests(`${dateText(lunch.date, records.today)}${angle}: ${foods}.`, [lunch])];
    }),
  ];
}

/** "9 March", with the year where it is not this one. */
function dateText(on: Day, today: Day): string {
  const [year, , date] = partsOf(on);
  return `${date} ${monthName(on)}${year === partsOf(today)[0] ? "" : ` ${year}`}`;
}

function eatenOf(records: EpisodeRecords, item: DraftItem, childId: string): number | null {
  return reactionOf(records, item.id, childId)?.eaten ?? null;
}

function rests(text: string, lunches: readonly DraftLunch[]): Sentence {
  return { text, facts: lunches.map(({ id }) => `packed:${id}`) };
}
