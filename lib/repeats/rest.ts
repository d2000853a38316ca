import { addDays, daysBetween, type Day } from "#lib/calendar/index.ts";
import type { History } from "./history.ts";
import { subjectsOf, type RepeatLevel, type ShownItem, type ShownWeek } from "./shown.ts";

/**
 * Days something stays out after it was on, where neither the user nor the food says otherwise.
 * Common practice, no source: a narrower level rests at least as long as a wider one.
 */
export const DEFAULT_REST_DAYS: Readonly<Record<RepeatLevel, number>> = {
  product: 7,
  food: 7,
  family: 2,
  trick: 7,
  theme: 364,
  motif: 28,
};

/** The rest windows of a series. */
export type RestRules = {
  readonly days: Readonly<Record<RepeatLevel, number>>;
  /** Days for one thing alone, by `restKey`; they go before the level's. 0 exempts it. */
  readonly own: ReadonlyMap<string, number>;
};

/** The key of a thing's own rest days in `RestRules.own`. */
export function restKey(level: RepeatLevel, id: string): string {
  return `${level}:${id}`;
}

/** Something that comes back before its rest is over. */
export type RestWarning = {
  readonly level: RepeatLevel;
  /** Id of what repeats: a product, food, family, trick, theme or motif. */
  readonly what: string;
  /** The food of the item that repeats it; null for themes and motifs. */
  readonly foodId: string | null;
  readonly on: Day;
  readonly lastOn: Day;
  /** Days from `lastOn` to `on`, always below `restDays`. */
  readonly daysAgo: number;
  readonly restDays: number;
  /** Whose rule it is: the thing's own, or the series' for its level. */
  readonly rule: "own" | "series";
};

/**
 * What in a week comes back too early, in the order of the week. History may hold the week itself:
 * only days before an item's own are looked at. Of product, food and family the narrowest that is
 * broken is reported; tricks, the theme and motifs each for themselves. Staples are exempt.
 */
export function checkRest(week: ShownWeek, history: History, rules: RestRules): RestWarning[] {
  const themed = [
    ...(week.themeId === null ? [] : [{ level: "theme" as const, id: week.themeId }]),
    ...week.motifs.map((id) => ({ level: "motif" as const, id })),
  ];
  const ofTheme = themed.flatMap((subject) =>
    restBroken({ ...subject, foodId: null, on: week.week }, history, rules),
  );
  const items = [...week.items].sort((left, right) => daysBetween(right.on, left.on));
  return [...ofTheme, ...items.flatMap((item) => checkItemRest(item, history, rules))];
}

/** What one item repeats too early; see `checkRest`. */
export function checkItemRest(item: ShownItem, history: History, rules: RestRules): RestWarning[] {
  const broken = subjectsOf(item).flatMap((subject) =>
    restBroken({ ...subject, foodId: item.foodId, on: item.on }, history, rules),
  );
  const ofTricks = broken.filter(({ level }) => level === "trick");
  if (item.isStaple) return ofTricks;
  const narrowest = broken.find(({ level }) => level !== "trick");
  return narrowest ? [narrowest, ...ofTricks] : ofTricks;
}

/** The first day from which something may be on again; undefined when it never was on. */
export function nextPossible(
  level: RepeatLevel,
  id: string,
  history: History,
  rules: RestRules,
): Day | undefined {
  const lastOn = history.daysOf(level, id).at(-1);
  return lastOn && addDays(lastOn, restDaysOf(level, id, rules).restDays);
}

function restBroken(
  subject: { level: RepeatLevel; id: string; foodId: string | null; on: Day },
  history: History,
  rules: RestRules,
): RestWarning[] {
  const { level, id, foodId, on } = subject;
  const { restDays, rule } = restDaysOf(level, id, rules);
  const lastOn = history.lastBefore(level, id, on);
  if (lastOn === undefined) return [];
  const daysAgo = daysBetween(lastOn, on);
  return daysAgo < restDays
    ? [{ level, what: id, foodId, on, lastOn, daysAgo, restDays, rule }]
    : [];
}

function restDaysOf(
  level: RepeatLevel,
  id: string,
  rules: RestRules,
): { readonly restDays: number; readonly rule: RestWarning["rule"] } {
  const own = rules.own.get(restKey(level, id));
  return own === undefined
    ? { restDays: rules.days[level], rule: "series" }
    : { restDays: own, rule: "own" };
}
