import { bestAssignment, type ThemeCut } from "./assign-themes.ts";
import { indexProblem } from "./index-problem.ts";
import type { PlanProblem } from "./problem.ts";
import type { Solver } from "./solver.ts";
import { closeWeeks, openWeeks, pricesOf, themeWorths } from "./theme-weeks.ts";
import { pickThemes, themePotentials } from "./theme-potential.ts";

/** How many prices of what weeks share are averaged; older ones fade. */
const MEMORY = 30;
/** Bound and best relaxed choice this close: no choice of themes is left to look at. */
const DONE_POINTS = 0.01;

/**
 * Upper bounds on the points of every plan whatever its themes, each at most the one before; one look
 * between two of them. For any prices of what the weeks share, each theme of each week is worth so much
 * at most (Lagrangian relaxation; Geoffrion 1974); every set of prices bounds every choice of themes, and
 * the choice that all of them together bound least tightly is looked at next (cutting planes; Benders
 * 1962). Ends after `looksMax` looks or when nothing is left to prove.
 */
export function* allThemeBounds(
  problem: PlanProblem,
  solver: Solver,
  { looksMax }: { readonly looksMax: number },
): Generator<number, void> {
  const indexed = indexProblem(problem);
  const ground = openWeeks(indexed, solver);
  const cuts: ThemeCut[] = [];
  const seen = new Set<string>();
  let lowest = Infinity;
  let best = -Infinity;
  let mean: Float64Array | undefined;
  let themes = pickThemes(indexed, themePotentials(indexed));
  try {
    for (let look = 1; look <= looksMax && lowest > best + DONE_POINTS; look += 1) {
      const { bound, prices } = pricesOf(ground, themes);
      best = Math.max(best, bound);
      mean = fade(mean, prices, 1 / Math.min(look, MEMORY));
      // Averages bound many choices at once, a choice's own prices that choice best.
      const own = seen.has(themes.join()) ? 1 : look % 2 === 1 ? 0 : 0.5;
      cuts.push(themeWorths(ground, fade(mean, prices, own)));
      seen.add(themes.join());
      const next = bestAssignment(indexed, cuts);
      themes = next.themes;
      lowest = Math.min(lowest, next.bound);
      yield lowest;
    }
  } finally {
    closeWeeks(ground);
  }
}

/** The mean moved towards new prices by a share. */
function fade(mean: Float64Array | undefined, prices: Float64Array, share: number): Float64Array {
  return prices.map((price, tie) => (1 - share) * (mean?.[tie] ?? price) + share * price);
}
