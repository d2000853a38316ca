import { isPresent } from "#lib/base/index.ts";
import { mediumDay } from "#lib/calendar/index.ts";
import type {
  DraftChild,
  DraftItem,
  DraftLunch,
  DraftReaction,
  EpisodeRecords,
} from "../records.ts";
import type { Noun } from "../words/index.ts";
import type { Fact, Ref, VerdictDetail } from "./fact.ts";
import { itemNoun, reactionOf, tenseOf, tinsOf, toldItems } from "./told-items.ts";

const QUARTERS = ["none", "¼", "½", "¾", "all"] as const;
/** A quote longer than this is kept out of drafts: it would be a story of its own. */
const QUOTE_MOST = 200;

/** What each child ate of a lunch that was packed, and what it said. */
export function verdictFacts(lunch: DraftLunch, records: EpisodeRecords): Fact[] {
  if (tenseOf(lunch, records) !== "did") return [];
  return tinsOf(lunch, records).flatMap((child) => {
    const items = toldItems(lunch).filter((item) => !item.notFor.includes(child.id));
    const logged = items.flatMap((item) => {
      const reaction = reactionOf(records, item.id, child.id);
      return reaction ? [{ item, reaction }] : [];
    });
    return [
      verdictFact(lunch, child, items, logged),
      ...logged.map((one) => quoteFact(lunch, child, one)),
    ].filter(isPresent);
  });
}

type Logged = { readonly item: DraftItem; readonly reaction: DraftReaction };

function verdictFact(
  lunch: DraftLunch,
  child: DraftChild,
  items: readonly DraftItem[],
  logged: readonly Logged[],
): Fact | undefined {
  const seen = logged.filter(({ reaction }) => reaction.eaten !== null);
  if (seen.length === 0) return undefined;
  const at = (eaten: number): Noun[] =>
    seen.filter(({ reaction }) => reaction.eaten === eaten).map(({ item }) => itemNoun(item));
  const detail: VerdictDetail = {
    ...{ kind: "verdict", name: child.onScreenName, isWhole: seen.length === items.length },
    ...{ all: at(4), most: at(3), half: at(2), little: at(1), none: at(0) },
  };
  return {
    ...{ id: `verdict:${lunch.id}:${child.id}`, kind: "verdict", detail },
    refs: [{ table: "Lunch", id: lunch.id }, ...seen.flatMap((one) => refsOf(child, one))],
    label: `${child.onScreenName}’s verdict of ${mediumDay(lunch.date)}`,
    rows: seen.map(({ item, reaction }) => [item.food, QUARTERS[reaction.eaten ?? 0] ?? ""]),
    on: lunch.date,
  };
}

function quoteFact(lunch: DraftLunch, child: DraftChild, logged: Logged): Fact | undefined {
  const { item, reaction } = logged;
  if (reaction.quote === "" || reaction.quote.length > QUOTE_MOST) return undefined;
  return {
    id: `quote:${item.id}:${child.id}`,
    kind: "quote",
    detail: {
      ...{ kind: "quote", name: child.onScreenName, words: reaction.quote },
      about: itemNoun(item),
    },
    refs: refsOf(child, logged),
    label: `${child.onScreenName}’s words of ${mediumDay(lunch.date)}`,
    rows: [
      ["About", item.food],
      ["Said", reaction.quote],
    ],
    on: lunch.date,
  };
}

function refsOf(child: DraftChild, { item }: Logged): Ref[] {
  return [
    { table: "Reaction", id: `${item.id}:${child.id}` },
    { table: "LunchItem", id: item.id },
    { table: "Food", id: item.foodId },
    { table: "Child", id: child.id },
  ];
}
