import { dayNumber } from "#lib/calendar/index.ts";
import type { IndexedProblem } from "./indexed.ts";
import type { PlanProblem, PlanTheme } from "./problem.ts";
import { POINTS } from "./weights.ts";

/** No plan is this long: a theme comes at most once in it. */
const ONCE_IN_A_PLAN_DAYS = 100_000;

type IndexedThemes = Pick<
  IndexedProblem,
  "themeAllowed" | "themeValues" | "themeGaps" | "fits" | "lockedThemes"
>;

/** Where themes may be, what choosing them is worth, how far apart they stay and what fits them. */
export function indexThemes(
  problem: PlanProblem,
  themeIndex: ReadonlyMap<string, number>,
): IndexedThemes {
  const { themes, weeks, weights } = problem;
  const themeAllowed = new Uint8Array(weeks.length * themes.length);
  const themeValues = new Float64Array(weeks.length * themes.length);
  weeks.forEach(({ monday }, week) => {
    themes.forEach((theme, number) => {
      const place = week * themes.length + number;
      const isResting = theme.shownOn.some(
        (shown) => Math.abs(dayNumber(monday) - dayNumber(shown)) < theme.restDays,
      );
      const isOut = theme.notIn.some((out) => out.monday === monday);
      themeAllowed[place] = isResting || isOut ? 0 : 1;
      const bonus = theme.bonus.filter((entry) => entry.monday === monday);
      themeValues[place] =
        weights.theme * bonus.reduce((sum, { points }) => sum + points, 0) +
        freshThemePoints(theme, weights.fresh);
    });
  });
  return {
    themeAllowed,
    themeValues,
    themeGaps: gapsBetween(problem, themeIndex),
    fits: fitsOf(problem, themeIndex),
    lockedThemes: Int32Array.from(weeks, ({ lockedThemeId }) =>
      lockedThemeId === null ? -1 : (themeIndex.get(lockedThemeId) ?? -1),
    ),
  };
}

/** Points for each theme and item when the theme is on. */
function fitsOf(problem: PlanProblem, themeIndex: ReadonlyMap<string, number>): Float64Array {
  const fits = new Float64Array(problem.themes.length * problem.items.length);
  problem.items.forEach((item, number) => {
    for (const { themeId, fit } of item.fits) {
      const theme = themeIndex.get(themeId);
      if (theme !== undefined) fits[theme * problem.items.length + number] = fit;
    }
  });
  return fits;
}

/** Points of a week for how little its theme echoes the weeks shown: all of them for sharing nothing. */
export function freshThemePoints({ echo }: PlanTheme, weight: number): number {
  return (weight * POINTS.freshTheme * POINTS.nearThemeEcho) / (POINTS.nearThemeEcho + echo);
}

function gapsBetween(problem: PlanProblem, themeIndex: ReadonlyMap<string, number>): Int32Array {
  const count = problem.themes.length;
  const gaps = new Int32Array(count * count);
  for (let theme = 0; theme < count; theme += 1) gaps[theme * count + theme] = ONCE_IN_A_PLAN_DAYS;
  for (const { themeIds, days } of problem.themesApart) {
    const one = themeIndex.get(themeIds[0]);
    const other = themeIndex.get(themeIds[1]);
    if (one === undefined || other === undefined || one === other) continue;
    gaps[one * count + other] = Math.max(days, gaps[one * count + other] ?? 0);
    gaps[other * count + one] = gaps[one * count + other] ?? 0;
  }
  return gaps;
}

/** Points of a lunch for the fit of its items: only so many count. */
export function themePoints(fitSum: number, weight: number): number {
  return weight * POINTS.theme * Math.min(POINTS.themeItemsMax, fitSum);
}
