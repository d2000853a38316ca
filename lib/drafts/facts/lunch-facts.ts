import { isPresent } from "#lib/base/index.ts";
import { mediumDay } from "#lib/calendar/index.ts";
import type { DraftItem, DraftLunch, EpisodeRecords } from "../records.ts";
import { minutesText } from "../words/index.ts";
import type { Fact, Ref } from "./fact.ts";
import { itemNoun, shownFood, tenseOf, tinsOf, toldItems } from "./told-items.ts";

/** What went into the tins of a day, what stayed behind, and the minutes it took. */
export function lunchFacts(lunch: DraftLunch, records: EpisodeRecords): Fact[] {
  const tense = tenseOf(lunch, records);
  const items = toldItems(lunch);
  if (!tense || items.length === 0) return [];
  return [
    packedFact(lunch, records, items, tense),
    ...(tense === "did" ? swapFacts(lunch) : []),
    tense === "did" ? minutesFact(lunch) : undefined,
  ].filter(isPresent);
}

function packedFact(
  lunch: DraftLunch,
  records: EpisodeRecords,
  items: readonly DraftItem[],
  tense: "did" | "will",
): Fact {
  const foods = items.map(shownFood);
  return {
    id: `packed:${lunch.id}`,
    kind: "packed",
    detail: {
      ...{ kind: "packed", tense, foods, date: lunch.date, angle: lunch.angle },
      tins: Math.max(1, tinsOf(lunch, records).length),
    },
    refs: [{ table: "Lunch", id: lunch.id }, ...items.flatMap(itemRefs)],
    label: `The tin of ${mediumDay(lunch.date)}`,
    rows: [
      ["Lunch", `${mediumDay(lunch.date)}${lunch.angle ? `, ${lunch.angle}` : ""}`],
      [tense === "did" ? "Packed" : "Planned", foods.join(", ")],
    ],
    on: lunch.date,
  };
}

function itemRefs(item: DraftItem): Ref[] {
  return [
    { table: "LunchItem", id: item.id },
    { table: "Food", id: item.foodId },
  ];
}

function swapFacts(lunch: DraftLunch): Fact[] {
  return lunch.items
    .filter((item) => item.fate === "scrapped")
    .map((out) => {
      const stepsIn = lunch.items.find(
        (item) => item.insteadOfId === out.id && item.fate === "stepped-in",
      );
      return {
        id: `swap:${out.id}`,
        kind: "swap",
        detail: {
          ...{ kind: "swap", date: lunch.date, out: itemNoun(out), reason: out.reason },
          stepsIn: stepsIn ? itemNoun(stepsIn) : null,
        },
        refs: [
          { table: "Lunch", id: lunch.id },
          ...itemRefs(out),
          ...(stepsIn ? itemRefs(stepsIn) : []),
        ],
        label: `What stayed behind on ${mediumDay(lunch.date)}`,
        rows: [
          ["Stayed out", out.food],
          ["Why", out.reason || "not said"],
          ["Stepped in", stepsIn?.food ?? "nothing"],
        ],
        on: lunch.date,
      } satisfies Fact;
    });
}

function minutesFact(lunch: DraftLunch): Fact | undefined {
  if (lunch.minutesUsed === null || Math.round(lunch.minutesUsed) < 1) return undefined;
  return {
    id: `minutes:${lunch.id}`,
    kind: "minutes",
    detail: { kind: "minutes", date: lunch.date, minutes: Math.round(lunch.minutesUsed) },
    refs: [{ table: "Lunch", id: lunch.id }],
    label: `The minutes of ${mediumDay(lunch.date)}`,
    rows: [["Minutes used", minutesText(lunch.minutesUsed)]],
    on: lunch.date,
  };
}
