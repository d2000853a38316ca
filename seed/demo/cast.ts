import { partsOf, type Day } from "#lib/calendar/index.ts";
import type { DemoAvoidance, DemoChild, DemoSchoolRule, DemoShop } from "./records.ts";

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

export const SCHOOL_RULES: readonly DemoSchoolRule[] = [
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
