import type { IndexedProblem } from "./indexed.ts";
import { POINTS } from "./weights.ts";

/**
 * A quick guess of what a week could earn with each theme (week * themes + theme): for each part the
 * best items once each, as many as the week needs, blind to all limits. -Infinity where not allowed.
 */
export function themePotentials(indexed: IndexedProblem): Float64Array {
  const { weekCount, themeCount, themeAllowed, themeValues } = indexed;
  const potentials = new Float64Array(weekCount * themeCount);
  for (let week = 0; week < weekCount; week += 1) {
    for (let theme = 0; theme < themeCount; theme += 1) {
      const place = week * themeCount + theme;
      potentials[place] = themeAllowed[place]
        ? (themeValues[place] ?? 0) + weekPotential(indexed, week, theme)
        : -Infinity;
    }
  }
  return potentials;
}

/** Themes for the weeks without a locked one: the highest potential first, gaps between themes kept. */
export function pickThemes(indexed: IndexedProblem, potentials: Float64Array): Int32Array {
  const { weekCount, themeCount, lockedThemes } = indexed;
  const themes = Int32Array.from(lockedThemes);
  const order = [...potentials.keys()]
    .filter((place) => (potentials[place] ?? 0) > -Infinity)
    .sort((left, right) => (potentials[right] ?? 0) - (potentials[left] ?? 0) || left - right);
  for (const place of order) {
    const week = Math.floor(place / themeCount);
    const theme = place % themeCount;
    if (themes[week] === -1 && keepsGaps(indexed, themes, week, theme)) themes[week] = theme;
    if (themes.every((chosen) => chosen >= 0)) break;
  }
  return weekCount === 0 ? new Int32Array(0) : themes;
}

/** True when a theme in a week stays far enough from the other weeks' themes. */
export function keepsGaps(
  indexed: IndexedProblem,
  themes: Int32Array,
  week: number,
  theme: number,
): boolean {
  const { themeCount, themeGaps, mondayNumbers } = indexed;
  return themes.every((other, place) => {
    if (other < 0 || place === week) return true;
    const days = Math.abs((mondayNumbers[place] ?? 0) - (mondayNumbers[week] ?? 0));
    return days >= (themeGaps[theme * themeCount + other] ?? 0);
  });
}

function weekPotential(indexed: IndexedProblem, week: number, theme: number): number {
  const { daysOfWeek, itemCount, itemsOfPart, allowed, values, fits, problem } = indexed;
  const days = daysOfWeek[week] ?? [];
  const themeWeight = problem.weights.theme * POINTS.theme;
  return itemsOfPart.reduce((sum, items, part) => {
    const worths = items
      .filter((item) => days.some((day) => allowed[day * itemCount + item]))
      .map((item) => {
        const value = values[(days[0] ?? 0) * itemCount + item] ?? 0;
        return value + themeWeight * (fits[theme * itemCount + item] ?? 0);
      })
      .sort((left, right) => right - left)
      .slice(0, days.length * (problem.parts[part]?.min ?? 0));
    return sum + worths.reduce((total, worth) => total + worth, 0);
  }, 0);
}
