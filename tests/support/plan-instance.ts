import { randomFrom, type Random } from "#lib/base/index.ts";
import { addDays, day, daysBetween, weeksLater, type Day } from "#lib/calendar/index.ts";
import {
  DEFAULT_WEIGHTS,
  type PlanItem,
  type PlanPart,
  type PlanProblem,
  type PlanTheme,
} from "#lib/planner/index.ts";
import { makeForbidden, makeQuotas, makeRests } from "./plan-instance-rules.ts";

/** How large an invented problem is. */
export type InstanceSize = {
  readonly seed: string;
  readonly items: number;
  readonly weeks: number;
  readonly daysPerWeek: number;
  readonly themes: number;
  readonly children: number;
  readonly historyWeeks: number;
  readonly parts: readonly PlanPart[];
};

const LUNCH: readonly PlanPart[] = [
  { part: "main", min: 1, max: 1 },
  { part: "protein", min: 0, max: 1 },
  { part: "grain", min: 1, max: 1 },
  { part: "vegetable", min: 1, max: 2 },
  { part: "fruit", min: 1, max: 1 },
  { part: "dairy", min: 0, max: 1 },
  { part: "dip", min: 0, max: 1 },
  { part: "treat", min: 0, max: 1 },
];

/** The size the planner is measured at: a month, 400 items, three children, one year of history. */
export const MONTH: InstanceSize = {
  seed: "1",
  items: 400,
  weeks: 4,
  daysPerWeek: 5,
  themes: 40,
  children: 3,
  historyWeeks: 52,
  parts: LUNCH,
};

/** Small enough to try every plan there is. */
export const TINY: InstanceSize = {
  seed: "1",
  items: 9,
  weeks: 1,
  daysPerWeek: 2,
  themes: 2,
  children: 2,
  historyWeeks: 3,
  parts: [
    { part: "main", min: 1, max: 1 },
    { part: "fruit", min: 1, max: 1 },
    { part: "treat", min: 0, max: 1 },
  ],
};

const START = day("2026-09-07");
const COLOURS = ["red", "orange", "yellow", "green", "blue", "purple", "white", "brown", "cream"];

/** An invented item and when it was on. */
export type MadeItem = {
  readonly item: PlanItem;
  readonly shownOn: readonly Day[];
};

/** An invented problem; the same size and seed give the same problem. Nothing in it is real. */
export function planInstance(size: InstanceSize): PlanProblem {
  const random = randomFrom(`plan-instance ${size.seed}`);
  const themes = makeThemes(size, random);
  const shops = Array.from({ length: 6 }, (_, shop) => ({
    id: `shop-${shop}`,
    name: `Shop ${shop}`,
    effort: 0.6 + shop * 0.2,
  }));
  const made = makeItems(size, random, themes);
  const items = made.map(({ item }) => item);
  const weeks = Array.from({ length: size.weeks }, (_, week) => ({
    monday: weeksLater(START, week),
    days: Array.from({ length: size.daysPerWeek }, (_, weekday) => ({
      date: addDays(weeksLater(START, week), weekday),
      minutesMax: size.items < 50 ? 9 : 12 + random.below(8),
    })),
    budgetCents: (size.items < 50 ? 420 : 900) * size.daysPerWeek,
    lockedThemeId: null,
  }));
  const sample = (count: number): string[] =>
    random
      .shuffle(items)
      .slice(0, count)
      .map(({ id }) => id);
  return {
    weeks,
    themes,
    parts: size.parts,
    items,
    children: Array.from({ length: size.children }, (_, child) => ({
      id: `c${child}`,
      name: `Child ${child}`,
    })),
    shops,
    rests: makeRests(made),
    quotas: makeQuotas(size, random, items),
    forbidden: makeForbidden(
      size,
      weeks.flatMap((week) => week.days.map(({ date }) => date)),
      sample,
    ),
    themesApart: themes.slice(0, Math.floor(themes.length / 4)).map((theme, place) => ({
      themeIds: [theme.id, themes[themes.length - 1 - place]?.id ?? theme.id] as const,
      days: 21,
      why: "shared motifs",
    })),
    owed: [0, 1, 2].slice(0, Math.ceil(size.items / 100)).map((entry) => ({
      id: `owed-${entry}`,
      name: `Owed ${entry}`,
      itemIds: sample(2),
      useBy: addDays(START, 4 + 5 * entry),
      urgency: 1,
    })),
    locks: [],
    wishes: [{ itemIds: sample(2), date: null, points: 4 }],
    newFoods: { perLunchMax: 1, perWeekMax: 3, perWeekMin: size.items < 50 ? 0 : 1 },
    // Liking at the size of the other aims: a larger one would only dilute a gap given in percent.
    weights: { ...DEFAULT_WEIGHTS, liked: 0.4 },
  };
}

function makeThemes(size: InstanceSize, random: Random): PlanTheme[] {
  return Array.from({ length: size.themes }, (_, number) => {
    const shown =
      random.next() < 0.5
        ? [weeksLater(START, -1 - random.below(Math.max(1, size.historyWeeks)))]
        : [];
    const isOut = random.next() < 0.25;
    return {
      id: `theme-${number}`,
      name: `Theme ${number}`,
      restDays: size.themes < 5 ? 0 : 364,
      shownOn: shown,
      // Of the size that a year of weeks gives: one shown in whole, every fourth by a motif, others nothing.
      echo: shown.length > 0 ? 0.18 : number % 4 === 0 ? 0.018 : 0,
      notIn: isOut ? [{ monday: START, why: "out of season" }] : [],
      bonus: random.next() < 0.1 ? [{ monday: START, points: 10, why: "a feast" }] : [],
    };
  });
}

function makeItems(size: InstanceSize, random: Random, themes: readonly PlanTheme[]): MadeItem[] {
  const appetite = Array.from({ length: size.children }, () => 0.5 + 0.35 * random.next());
  const made: MadeItem[] = [];
  for (let number = 0; made.length < size.items; number += 1) {
    const { part } = size.parts[number % size.parts.length] ?? { part: "main" as const };
    const shownOn = pastDays(size, random);
    const last = shownOn.at(-1);
    const isNew = last === undefined && random.next() < 0.8;
    const item: PlanItem = {
      id: `food-${number}`,
      name: `Food ${number}`,
      foodId: `food-${number}`,
      familyId: `family-${part}-${random.below(Math.max(2, Math.floor(size.items / 32)))}`,
      trickIds: [],
      part,
      acceptance: appetite.map((mean) => ({
        mean: Math.min(0.98, Math.max(0.05, mean + 0.6 * (random.next() - 0.5))),
        sd: isNew ? 0.25 : 0.05 + 0.1 * random.next(),
      })),
      isNew,
      costCents: 40 + random.below(260),
      minutes: random.below(9) / 2,
      shopIds: soldAt(part, random),
      wasteCents: random.next() < 0.4 ? random.below(90) : 0,
      colours: random.shuffle(COLOURS).slice(0, 1 + random.below(2)),
      fits: themes
        .filter(() => random.next() < 0.1)
        .map(({ id }) => ({ themeId: id, fit: random.next() < 0.5 ? 1 : 0.5 })),
      daysUnseen: last === undefined ? null : daysBetween(last, START),
      echo: 0.0008 * shownOn.length,
      isOnHand: random.next() < 0.12,
    };
    made.push({ item, shownOn });
    if (random.next() < 0.5 && made.length < size.items)
      made.push({ item: withTrick(item, random, themes), shownOn });
  }
  return made;
}

/**
 * One market has most things; one shop each is good for produce, bread, and meat or fish; two small
 * ones have a few things nobody else has. A tenth is on hand.
 */
function soldAt(part: string, random: Random): string[] {
  const special = { vegetable: 1, fruit: 1, grain: 2, treat: 2, main: 3, protein: 3 }[part];
  const luck = random.next();
  if (luck < 0.1) return [];
  if (luck < 0.22) return [`shop-${4 + random.below(2)}`];
  const market = random.next() < 0.75 ? ["shop-0"] : [];
  const own = special !== undefined && random.next() < 0.6 ? [`shop-${special}`] : [];
  return market.length + own.length > 0 ? [...market, ...own] : ["shop-0"];
}

/** The same food in a presentation that fits other themes and takes a minute. */
function withTrick(item: PlanItem, random: Random, themes: readonly PlanTheme[]): PlanItem {
  const trick = `trick-${random.below(40)}`;
  return {
    ...item,
    id: `${item.id}+${trick}`,
    name: `${item.name} with ${trick}`,
    trickIds: [trick],
    minutes: item.minutes + 1,
    fits: themes.filter(() => random.next() < 0.15).map(({ id }) => ({ themeId: id, fit: 1 })),
  };
}

function pastDays(size: InstanceSize, random: Random): Day[] {
  const times =
    random.next() < 0.15 ? 0 : 1 + random.below(Math.max(1, Math.ceil(size.historyWeeks / 8)));
  return Array.from({ length: times }, () =>
    addDays(START, -3 - random.below(7 * size.historyWeeks)),
  ).sort();
}
