import { groupBy, isPresent } from "#lib/base/index.ts";
import { addDays, dayFrom, daysBetween, daySpan, partsOf, type Day } from "#lib/calendar/index.ts";
import type { DraftItem, DraftLunch, EpisodeRecords } from "../records.ts";
import { kindOf, nounOf } from "../words/index.ts";
import type { Fact, Ref, Tense } from "./fact.ts";
import { reactionOf, tenseOf, tinsOf, toldItems } from "./told-items.ts";

/** A food is told as back when it was away this long, in weeks. Common practice, no source. */
const RETURN_WEEKS = 8;
/** Every so many lunches there is a round number to tell. */
const ROUND_LUNCHES = 50;
/** A first is worth telling once the series has this many lunches behind it. */
const FIRSTS_AFTER = 15;

/** What holds for the week as a whole: its theme, firsts and returns, and the counts of its verdicts. */
export function weekFacts(records: EpisodeRecords): Fact[] {
  const told = records.lunches.filter(
    (lunch) => tenseOf(lunch, records) && toldItems(lunch).length > 0,
  );
  return [
    themeFact(records, told),
    ...appearances(records, told),
    tally(records, told),
    ...sharedVerdicts(records, told),
    ...milestones(records, told),
  ].filter(isPresent);
}

function themeFact(records: EpisodeRecords, told: readonly DraftLunch[]): Fact {
  const packed = told.filter((lunch) => lunch.isPacked).length;
  const tense: Tense = packed > 0 ? "did" : "will";
  const lunches = packed > 0 ? packed : told.length;
  return {
    id: "theme",
    kind: "theme",
    detail: { kind: "theme", title: records.title, lunches, tense },
    refs: [{ table: "Episode", id: records.id }],
    label: "The theme of the week",
    rows: [
      ["Episode", String(records.number)],
      ["Week", daySpan(records.weekOf, addDays(records.weekOf, 4))],
      ["Title", records.title],
      [tense === "did" ? "Lunches packed" : "Lunches planned", String(lunches)],
    ],
    on: null,
  };
}

/** Firsts and returns, each food once, on the day it came. */
function appearances(records: EpisodeRecords, told: readonly DraftLunch[]): Fact[] {
  const seen = new Set<string>();
  return told.flatMap((lunch) => {
    const tense = tenseOf(lunch, records);
    if (!tense) return [];
    return toldItems(lunch).flatMap((item) => {
      if (seen.has(item.foodId)) return [];
      seen.add(item.foodId);
      const fact = appearance(item, lunch.date, records, tense);
      return fact ? [fact] : [];
    });
  });
}

function appearance(
  item: DraftItem,
  on: Day,
  { lastPacked, lunchesBefore }: EpisodeRecords,
  tense: Tense,
): Fact | undefined {
  const last = lastPacked.get(item.foodId);
  const common = { refs: refsOf(item), on };
  const food = kindOf({ name: item.food, countUnit: item.countUnit });
  if (last === undefined) {
    if (lunchesBefore < FIRSTS_AFTER) return undefined;
    return {
      ...common,
      ...{ id: `first:${item.foodId}`, kind: "first", detail: { kind: "first", food, tense } },
      label: `${item.food}, a first`,
      rows: [
        ["Food", item.food],
        ["Packed before", "never"],
      ],
    };
  }
  const weeks = Math.floor(daysBetween(last, on) / 7);
  if (weeks < RETURN_WEEKS) return undefined;
  return {
    ...common,
    ...{ id: `return:${item.foodId}`, kind: "return" },
    detail: { kind: "return", food, weeks, tense },
    label: `${item.food}, back again`,
    rows: [
      ["Food", item.food],
      ["Packed before on", last],
      ["Weeks since", String(weeks)],
    ],
  };
}

/** How many tins came home empty, of those whose every food has a verdict. */
function tally(records: EpisodeRecords, told: readonly DraftLunch[]): Fact | undefined {
  const tins = told
    .filter((lunch) => lunch.isPacked)
    .flatMap((lunch) =>
      tinsOf(lunch, records).map((child) => {
        const items = toldItems(lunch).filter((item) => !item.notFor.includes(child.id));
        return items.map((item) => ({
          item,
          childId: child.id,
          eaten: eatenOf(records, item, child.id),
        }));
      }),
    )
    .filter((tin) => tin.every(({ eaten }) => eaten !== null));
  if (tins.length < 2) return undefined;
  const empty = tins.filter((tin) => tin.every(({ eaten }) => eaten === 4)).length;
  return {
    ...{ id: "tally", kind: "tally", detail: { kind: "tally", empty, tins: tins.length } },
    refs: tins
      .flat()
      .map(({ item, childId }) => ({ table: "Reaction", id: `${item.id}:${childId}` })),
    label: "Tins that came home empty",
    rows: [
      ["Tins with a full verdict", String(tins.length)],
      ["Came home empty", String(empty)],
    ],
    on: null,
  };
}

/** Foods that every child finished each time, and foods nobody touched. */
function sharedVerdicts(records: EpisodeRecords, told: readonly DraftLunch[]): Fact[] {
  const items = told.filter((lunch) => lunch.isPacked).flatMap(toldItems);
  const foods = [...groupBy(items, (item) => item.foodId).values()].map((group) => ({
    group,
    eaten: group.flatMap((item) =>
      records.children
        .filter((child) => !item.notFor.includes(child.id))
        .map((child) => eatenOf(records, item, child.id)),
    ),
  }));
  const whole = foods.filter(({ eaten }) => eaten.length >= 2 && !eaten.includes(null));
  const finished = whole.filter(({ eaten }) => eaten.every((one) => one === 4));
  const untouched = whole.filter(({ eaten }) => eaten.every((one) => one === 0));
  const children = records.children.length;
  return [
    shared("finished", "Finished by everyone", finished, records, children),
    shared("untouched", "Left by everyone", untouched, records, children),
  ].filter(isPresent);
}

function shared(
  kind: "finished" | "untouched",
  label: string,
  foods: readonly { readonly group: readonly DraftItem[] }[],
  records: EpisodeRecords,
  children: number,
): Fact | undefined {
  if (foods.length === 0) return undefined;
  const items = foods.flatMap(({ group }) => group);
  const nouns = foods.flatMap(({ group: [first] }) =>
    first ? [nounOf({ name: first.food })] : [],
  );
  return {
    ...{ id: kind, kind, label, on: null },
    detail: kind === "finished" ? { kind, foods: nouns, children } : { kind, foods: nouns },
    refs: items.flatMap((item) =>
      records.children.map((child): Ref => ({ table: "Reaction", id: `${item.id}:${child.id}` })),
    ),
    rows: [["Foods", nouns.map(({ bare }) => bare).join(", ")]],
  };
}

function milestones(records: EpisodeRecords, told: readonly DraftLunch[]): Fact[] {
  const packed = told.filter((lunch) => lunch.isPacked);
  const facts = packed.flatMap((lunch, index) => {
    const count = records.lunchesBefore + index + 1;
    return count % ROUND_LUNCHES === 0 ? [milestone(count, lunch, records.id)] : [];
  });
  const { seriesStartedOn } = records;
  const years = seriesStartedOn === null ? 0 : anniversaryIn(records.weekOf, seriesStartedOn);
  return years >= 1 && packed.length > 0 ? [...facts, milestone(years, null, records.id)] : facts;
}

/** Whole years since a day whose anniversary lies in the week, 0 when none does. */
function anniversaryIn(weekOf: Day, start: Day): number {
  const [, month, date] = partsOf(start);
  const sunday = addDays(weekOf, 6);
  const years = [partsOf(weekOf)[0], partsOf(sunday)[0]];
  const hit = years.find((year) => {
    const on = dayFrom(year, month, date);
    return on >= weekOf && on <= sunday;
  });
  return hit === undefined ? 0 : hit - partsOf(start)[0];
}

function milestone(count: number, lunch: DraftLunch | null, episodeId: string): Fact {
  const on = lunch?.date ?? null;
  return {
    ...{ id: lunch ? `milestone:${count}` : "milestone:years", kind: "milestone", on },
    detail: { kind: "milestone", count, date: on },
    refs: [lunch ? { table: "Lunch", id: lunch.id } : { table: "Episode", id: episodeId }],
    label: "A round number",
    rows: [[lunch ? "Lunches packed" : "Years of the series", String(count)]],
  };
}

function eatenOf(records: EpisodeRecords, item: DraftItem, childId: string): number | null {
  return reactionOf(records, item.id, childId)?.eaten ?? null;
}

function refsOf(item: DraftItem): Ref[] {
  return [
    { table: "LunchItem", id: item.id },
    { table: "Food", id: item.foodId },
  ];
}
