import type { IndexedProblem } from "./indexed.ts";
import type { Solver } from "./solver.ts";
import { keepsGaps, pickThemes, themePotentials } from "./theme-potential.ts";
import { closeWeeks, openWeeks, pricesOf, themeWorths, type ThemeWeeks } from "./theme-weeks.ts";

/** A theme in a week and the best it could earn there, given what the other weeks need too. */
export type RankedTheme = {
  readonly week: number;
  readonly theme: number;
  readonly points: number;
};

export type ThemeChoice = {
  /** One theme a week, -1: none possible. */
  readonly themes: Int32Array;
  /** No plan with these themes is worth more. */
  readonly bound: number;
  /** All possible themes, best first. */
  readonly ranked: readonly RankedTheme[];
};

/** Programs solved while looking for themes; each takes a few hundredths of a second for a month. */
const LOOKS_MAX = 14;

/**
 * Themes for all weeks together. The linear relaxation of the week model values a choice of themes;
 * its prices for what weeks share rank every theme of every week by one small program each; the most
 * promising changes are then tried (steepest ascent).
 */
export function chooseThemes(indexed: IndexedProblem, solver: Solver): ThemeChoice {
  const ground = openWeeks(indexed, solver);
  try {
    return ascend(ground);
  } finally {
    closeWeeks(ground);
  }
}

function ascend(ascent: ThemeWeeks): ThemeChoice {
  const { indexed } = ascent;
  let themes = pickThemes(indexed, themePotentials(indexed));
  let value = pricesOf(ascent, themes);
  let ranked = rank(ascent, value.prices);
  for (let looks = 1; looks < LOOKS_MAX;) {
    const better = firstBetter(ascent, themes, value.bound, ranked, LOOKS_MAX - looks);
    looks += better.looks;
    if (!better.themes) break;
    themes = better.themes;
    value = pricesOf(ascent, themes);
    ranked = rank(ascent, value.prices);
    looks += 2;
  }
  return { themes, bound: value.bound, ranked };
}

function firstBetter(
  ascent: ThemeWeeks,
  themes: Int32Array,
  bound: number,
  ranked: readonly RankedTheme[],
  looksMax: number,
): { looks: number; themes: Int32Array | null } {
  const pointsOf = (week: number): number =>
    ranked.find((entry) => entry.week === week && entry.theme === themes[week])?.points ??
    -Infinity;
  const moves = ranked
    .map((entry) => ({ ...entry, gain: entry.points - pointsOf(entry.week) }))
    .filter(({ week, gain }) => gain > 1e-6 && ascent.indexed.lockedThemes[week] === -1)
    .sort((left, right) => right.gain - left.gain);
  let looks = 0;
  for (const { week, theme } of moves) {
    if (looks >= looksMax) break;
    if (!keepsGaps(ascent.indexed, themes, week, theme)) continue;
    const changed = themes.slice();
    changed[week] = theme;
    looks += 1;
    if (pricesOf(ascent, changed).bound > bound + 1e-6) return { looks, themes: changed };
  }
  return { looks, themes: null };
}

/** Every theme of every week by its small program, the shared things priced. */
function rank(ground: ThemeWeeks, prices: Float64Array): RankedTheme[] {
  const { themeCount } = ground.indexed;
  const { worths } = themeWorths(ground, prices);
  const ranked = [...worths.entries()].map(([place, points]) => ({
    week: Math.floor(place / (themeCount + 1)),
    theme: place % (themeCount + 1),
    points,
  }));
  return ranked
    .filter(({ theme, points }) => theme < themeCount && points > -Infinity)
    .sort((left, right) => right.points - left.points);
}
