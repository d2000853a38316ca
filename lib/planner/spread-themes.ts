import { daysBetween, type Day } from "#lib/calendar/index.ts";

/** A theme of the pool, as spreading it over a year needs to know it. */
export type SpreadTheme = {
  readonly id: string;
  readonly name: string;
  readonly restDays: number;
  readonly shownOn: readonly Day[];
  readonly isSeasonal: boolean;
  /** Mondays of the weeks about its own day: a feast or a date. */
  readonly near: ReadonlySet<Day>;
  /** Mondays of the weeks that it is in season. */
  readonly possible: ReadonlySet<Day>;
};

/** A theme that could come in a week, with the reason in a few words. */
export type SpreadChoice = { readonly id: string; readonly name: string; readonly why: string };

/**
 * Themes to come for some empty weeks, by Monday: first those with a day of their own near it, then those
 * in season with the fewest weeks left to go to, then those of all year, the longest unseen first. None
 * returns before its rest is over; a week for which nothing is left is not in the answer.
 */
export function spreadThemes(
  mondays: readonly Day[],
  themes: readonly SpreadTheme[],
): ReadonlyMap<Day, SpreadChoice> {
  const chosen = new Map<Day, SpreadChoice>();
  const shown = new Map(themes.map(({ id, shownOn }) => [id, [...shownOn]]));
  const isRested = (theme: SpreadTheme, monday: Day): boolean =>
    (shown.get(theme.id) ?? []).every((on) => Math.abs(daysBetween(on, monday)) >= theme.restDays);
  const place = (monday: Day, theme: SpreadTheme, why: string): void => {
    chosen.set(monday, { id: theme.id, name: theme.name, why });
    shown.get(theme.id)?.push(monday);
  };
  for (const monday of mondays) {
    const theme = themes.find((one) => one.near.has(monday) && isRested(one, monday));
    if (theme) place(monday, theme, "its day is near");
  }
  for (const monday of mondays.filter((one) => !chosen.has(one))) {
    const able = themes.filter((one) => one.possible.has(monday) && isRested(one, monday));
    const weeksLeft = (theme: SpreadTheme): number =>
      mondays.filter((one) => one >= monday && theme.possible.has(one)).length;
    const lastOn = (theme: SpreadTheme): string =>
      (shown.get(theme.id) ?? []).toSorted().at(-1) ?? "";
    const [best] = able.toSorted(
      (one, other) =>
        Number(other.isSeasonal) - Number(one.isSeasonal) ||
        (one.isSeasonal ? weeksLeft(one) - weeksLeft(other) : 0) ||
        (lastOn(one) < lastOn(other) ? -1 : lastOn(one) > lastOn(other) ? 1 : 0),
    );
    if (best) place(monday, best, best.isSeasonal ? "in season" : "unseen the longest");
  }
  return chosen;
}
