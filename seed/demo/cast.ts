import { addDays, mondayOf, partsOf, type Day } from "#lib/calendar/index.ts";
import { USUAL_CARRYING, type Carrying } from "#lib/safety/index.ts";
import type { DemoAvoidance, DemoChild, DemoSchoolRule, DemoShop, DemoVoice } from "./records.ts";

/** Biscuit, 9, and Pepper, 5. Private names appear nowhere but in their own column. */
export function castOf(today: Day): DemoChild[] {
  const bornMonthsAgo = (months: number): string => {
    const [year, month] = partsOf(today);
    const total = year * 12 + month - 1 - months;
    return `${Math.floor(total / 12)}-${String((total % 12) + 1).padStart(2, "0")}`;
  };
  return [
    {
      ...{ id: "biscuit", privateName: "Ines", onScreenName: "Biscuit" },
      ...{ birthMonth: bornMonthsAgo(9 * 12 + 4), portionFactor: 1, facePoints: 5, position: 0 },
    },
    {
      ...{ id: "pepper", privateName: "Tomas", onScreenName: "Pepper" },
      ...{ birthMonth: bornMonthsAgo(5 * 12 + 2), portionFactor: 0.7, facePoints: 3, position: 1 },
    },
  ];
}

/** More children for the long bench series, after the two of the cast. */
export function extraChildren(count: number): DemoChild[] {
  return Array.from({ length: Math.max(0, count) }, (_, index) => ({
    ...{ id: `extra-${index + 1}`, privateName: `Extra ${index + 1}` },
    ...{ onScreenName: `Crumb ${index + 1}`, birthMonth: "2018-06", portionFactor: 0.9 },
    ...{ facePoints: 5 as const, position: index + 2 },
  }));
}

export const AVOIDANCES: readonly DemoAvoidance[] = [
  {
    id: "pepper-sesame",
    childId: "pepper",
    allergen: "sesame",
    severity: "allergy",
    note: "Read every label; the clinic's plan hangs inside the cupboard door.",
  },
];

/** What holds all year. */
const STANDING_RULES: readonly DemoSchoolRule[] = [
  {
    id: "nut-free-table",
    name: "The school keeps a nut-free table",
    keepsOut: { traits: ["nuts"], allergens: ["tree-nut", "peanut"] },
    ...{ position: 1, active: true },
  },
  {
    id: "no-glass",
    name: "No glass in lunch bags",
    keepsOut: { traits: ["in-glass"], allergens: [] },
    ...{ position: 2, active: true },
  },
  {
    id: "no-fizzy",
    name: "No fizzy drinks",
    keepsOut: { traits: ["fizzy"], allergens: [] },
    ...{ position: 3, active: true },
  },
];

/** The standing rules, and a trip this Friday on which lunch is eaten standing up. */
export function schoolRulesFor(today: Day): DemoSchoolRule[] {
  const friday = addDays(mondayOf(today), 4);
  return [
    ...STANDING_RULES,
    {
      id: "lighthouse-trip",
      name: "Lighthouse trip: eaten standing, no spoons or forks",
      keepsOut: { traits: ["needs-spoon", "needs-fork"], allergens: [], from: friday, to: friday },
      ...{ position: 4, active: true },
    },
  ];
}

/** The tin travels in a hard box with two packs; box and jar were each read once with a thermometer. */
export const CARRYING: Carrying = {
  ...USUAL_CARRYING,
  ...{ bag: "hard", packs: 2, packGrams: 250, indoorC: 20 },
  bagReading: { waterMl: 500, startC: 5, hours: 4, readC: 16, roomC: 20 },
  ...{ jarMl: 350, fillC: 85 },
  jarReading: { waterMl: 350, startC: 92, hours: 5, readC: 68, roomC: 20 },
};

/** Monthly means at the harbour, °C, January first: the swing that the day notes are drawn around. */
export const CLIMATE_C: readonly number[] = [5, 5, 8, 12, 16, 19, 20, 19, 16, 12, 8, 5];

/** How the series speaks, what never leaves the house, and the note on local rules; all invented. */
export const VOICE: DemoVoice = {
  signOn: "Hello from the harbour, the kettle is on.",
  signOff: "Lids on, and mind the gulls.",
  housePhrases: ["Small tin, big sea.", "Crumbs are for the gulls.", "If it fits, it sails."],
  placesKept: ["Lantern Hill School", "Net Loft Lane"],
  lawNote:
    "From a leaflet in our town hall: keep a log once a child is in 30 % of an episode or more.",
};

export const SHOPS: readonly DemoShop[] = [
  {
    ...{ id: "quayside-greens", name: "Quayside Greens", days: [2, 4, 6], hours: "08:00–16:00" },
    distanceOrder: 1,
    aisles: ["roots and leaves", "fruit", "herbs"],
    note: "Crates come in with the morning boat; best before ten.",
  },
  {
    ...{ id: "miller-and-daughter", name: "Miller & Daughter", days: [2, 3, 4, 5, 6] },
    hours: "06:30–13:00",
    distanceOrder: 2,
    aisles: ["bread", "small bakes", "crackers"],
    note: "Says which trays had sesame that day, if asked.",
  },
  {
    ...{ id: "lamp-street-market", name: "Lamp Street Market", days: [1, 2, 3, 4, 5, 6] },
    hours: "08:00–19:00",
    distanceOrder: 3,
    aisles: ["fruit and veg", "cold", "tins and jars", "dry goods", "freezer"],
    note: "The one that is always open.",
  },
  {
    ...{ id: "saturday-fish-steps", name: "Saturday Fish Steps", days: [6], hours: "07:00–11:00" },
    distanceOrder: 4,
    aisles: ["the slab", "smokehouse"],
    note: "Gone when it's gone.",
  },
];
