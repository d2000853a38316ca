import { day } from "#lib/calendar/index.ts";
import type { DraftItem, EpisodeRecords } from "#lib/drafts/index.ts";

/** An item with the usual values filled in. */
export function item(change: Partial<DraftItem> & Pick<DraftItem, "id" | "food">): DraftItem {
  return {
    ...{ foodId: `food-${change.food}`, countUnit: null, count: null },
    ...{ fate: "packed" as const, reason: "", insteadOfId: null, tricks: [], shop: null },
    ...{ product: null, allergens: [], maybeAllergens: [], notFor: [] },
    ...change,
  };
}

/** A week of one lunch: carrots packed, plums left behind for rye rolls, one verdict, one gift. */
export const WEEK: EpisodeRecords = {
  ...{ id: "e1", number: 7, weekOf: day("2026-03-09"), title: "harbour  picnic" },
  ...{ surprise: "a paper boat with a riddle", revealOn: day("2026-03-20") },
  ...{ today: day("2026-03-14"), seriesName: "Tin Harbour", seriesStartedOn: null },
  lunches: [
    {
      ...{ id: "l1", date: day("2026-03-11"), angle: "", isPacked: true, minutesUsed: 22 },
      items: [
        item({ id: "i1", food: "carrots" }),
        item({ id: "i2", food: "plums", fate: "scrapped", reason: "The bag split" }),
        item({
          ...{ id: "i3", food: "rye rolls", fate: "stepped-in", insteadOfId: "i2" },
          product: { id: "p1", name: "rye rolls", provenance: "gifted", disclosure: "" },
        }),
      ],
    },
  ],
  children: [{ id: "c1", onScreenName: "Pip", privateName: "Zoë" }],
  reactions: [
    { itemId: "i1", childId: "c1", eaten: 4, face: 100, quote: "<b>crunchy</b>" },
    { itemId: "i3", childId: "c1", eaten: 2, face: null, quote: "" },
  ],
  promises: [],
  lastPacked: new Map([["food-carrots", day("2025-12-01")]]),
  ...{ lunchesBefore: 30, nextTitle: "Night Train" },
  voice: {
    ...{ signOn: "", signOff: "Shut the lid!", housePhrases: [], tone: "plain", emoji: false },
    ...{ wordsPerMinute: 150, privateWords: ["Lamp Street School"] },
  },
};
