import type { IndexedProblem } from "./indexed.ts";
import { keepsGaps } from "./theme-potential.ts";

/** What each theme of each week is worth at most under some prices, and what the prices themselves bring. */
export type ThemeCut = {
  /** week * (themeCount + 1) + theme; the last of a week: no theme. -Infinity: not possible. */
  readonly worths: Float64Array;
  readonly remainder: number;
};

/** Partial choices looked at before the search gives up and returns the bound without one. */
const STEPS_MAX = 200_000;

/**
 * The choice of themes, gaps kept, that all cuts together allow most points, and how many. Depth first
 * with the cuts' own maxima as bound; a search cut short returns the bound of the weeks apart.
 */
export function bestAssignment(
  indexed: IndexedProblem,
  cuts: readonly ThemeCut[],
): { readonly bound: number; readonly themes: Int32Array } {
  const rests = cuts.map((cut) => bestOfRest(indexed, cut));
  const themes = new Int32Array(indexed.weekCount).fill(-1);
  const best = { bound: -Infinity, themes: themes.slice() };
  let steps = 0;
  const visit = (week: number, sums: Float64Array): void => {
    steps += 1;
    if (steps > STEPS_MAX) return;
    const bound = sums.reduce(
      (least, sum, cut) => Math.min(least, sum + (rests[cut]?.[week] ?? 0)),
      Infinity,
    );
    if (bound <= best.bound + 1e-9) return;
    if (week === indexed.weekCount) {
      best.bound = bound;
      best.themes.set(themes);
      return;
    }
    for (const theme of optionsOf(indexed, cuts, week)) {
      if (theme >= 0 && !keepsGaps(indexed, themes, week, theme)) continue;
      themes[week] = theme;
      visit(
        week + 1,
        sums.map((sum, cut) => sum + worthOf(indexed, cuts[cut], week, theme)),
      );
      themes[week] = -1;
    }
  };
  visit(
    0,
    Float64Array.from(cuts, ({ remainder }) => remainder),
  );
  const apart = Math.min(...cuts.map(({ remainder }, cut) => remainder + (rests[cut]?.[0] ?? 0)));
  return steps > STEPS_MAX ? { ...best, bound: apart } : best;
}

function worthOf(
  { themeCount }: IndexedProblem,
  cut: ThemeCut | undefined,
  week: number,
  theme: number,
): number {
  const place = week * (themeCount + 1) + (theme < 0 ? themeCount : theme);
  return cut?.worths[place] ?? -Infinity;
}

/** For each week, what it and the later ones are worth at most; one entry more: 0. */
function bestOfRest({ themeCount, weekCount }: IndexedProblem, { worths }: ThemeCut): Float64Array {
  const width = themeCount + 1;
  const rest = new Float64Array(weekCount + 1);
  for (let week = weekCount - 1; week >= 0; week -= 1) {
    const most = Math.max(...worths.subarray(week * width, (week + 1) * width));
    rest[week] = most + (rest[week + 1] ?? 0);
  }
  return rest;
}

/** A week's possible themes and none (-1), best first by the last cut. */
function optionsOf(indexed: IndexedProblem, cuts: readonly ThemeCut[], week: number): number[] {
  const worth = (theme: number): number => worthOf(indexed, cuts.at(-1), week, theme);
  return [-1, ...Array(indexed.themeCount).keys()]
    .filter((theme) => worth(theme) > -Infinity)
    .sort((left, right) => worth(right) - worth(left) || left - right);
}
