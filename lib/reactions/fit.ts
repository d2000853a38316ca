import { fitBetaPrior, type Tally } from "./beta.ts";
import { blend, fold } from "./fold.ts";
import type { Series } from "./series.ts";
import { certainty, USUAL_STRENGTHS, type Strengths } from "./strengths.ts";

/** Verdicts looked at when fitting, the latest: enough to tell, and quick at any age of the series. */
const FITTED_VERDICTS_MAX = 4500;

const GRID = {
  food: [0.35, 0.5, 0.7, 1, 1.5, 2.5, 3.5, 5, 7, 10, 14],
  family: [1.5, 2, 3, 5, 8, 12, 18, 30],
  siblings: [2, 4, 8, 12, 20, 40, 200],
  halfLifeDays: [60, 90, 120, 180, 240, 360, Infinity],
  day: [0.01, 0.03, 0.06, 0.1, 0.2, 0.4],
  face: [0, 0.15, 0.3, 0.45, 0.6, 0.75],
} as const;
type Axis = keyof typeof GRID;
const AXES = ["food", "family", "halfLifeDays", "siblings", "day", "face"] as const;

/**
 * Empirical-Bayes strengths of a series: those under which each day, foretold from the days before
 * it, was least surprising. Without discounting and for whole shares that sum is the logarithm of
 * the beta-binomial marginal likelihood (Pólya's urn), so this is its maximum, taken axis by axis
 * over a grid. A lognormal pull toward the usual strengths stands in for a hyperprior: a short
 * series keeps them.
 */
export function fitStrengths(series: Series): Strengths {
  const recent = latest(series);
  let best: Strengths = { ...USUAL_STRENGTHS, food: startingStrength(recent) };
  if (recent.verdicts.length < 20) return best;
  let cost = costOf(recent, best);
  for (let sweep = 0; sweep < 2; sweep += 1) {
    const before = cost;
    for (const axis of AXES) {
      for (const value of GRID[axis]) {
        if (value === best[axis]) continue;
        const tried = { ...best, [axis]: value };
        const reached = costOf(recent, tried);
        if (reached < cost) [best, cost] = [tried, reached];
      }
    }
    if (before - cost < 0.05) break;
  }
  return { ...best, ...fitWidth(recent, best) };
}

/**
 * Mean log-loss of the eaten share, in nats per verdict, when each day is foretold from the days
 * before it; NaN when nothing was seen eaten.
 */
export function foretellingLoss(series: Series, strengths: Strengths): number {
  let [loss, seen] = [0, 0];
  fold(series, blend(series, strengths.face), strengths, (index, { expected }) => {
    const eaten = series.eaten[index] ?? Number.NaN;
    if (Number.isNaN(eaten)) return;
    loss += logLoss(eaten, expected);
    seen += 1;
  });
  return loss / seen;
}

/** Cross-entropy of a share against a foretold share, in nats. */
export function logLoss(share: number, expected: number): number {
  return -(share * Math.log(expected) + (1 - share) * Math.log(1 - expected));
}

function costOf(series: Series, strengths: Strengths): number {
  const loss = foretellingLoss(series, strengths);
  if (Number.isNaN(loss)) return 0;
  return loss * series.verdicts.length + hyperprior(strengths);
}

/** Standard deviation of the logarithm of a strength around its usual value. */
const LOG_SPREAD = 1.2;
const FACE_SPREAD = 0.3;

function hyperprior(strengths: Strengths): number {
  let cost = 0;
  for (const axis of ["food", "family", "siblings", "halfLifeDays", "day"] satisfies Axis[]) {
    const value = Math.min(1000, strengths[axis]);
    cost += (Math.log(value / USUAL_STRENGTHS[axis]) / LOG_SPREAD) ** 2 / 2;
  }
  return cost + ((strengths.face - USUAL_STRENGTHS.face) / FACE_SPREAD) ** 2 / 2;
}

/** Where the search starts: the beta prior of "half or more eaten" over the cells. */
function startingStrength(series: Series): number {
  const tallies = new Map<number, { hits: number; trials: number }>();
  series.eaten.forEach((share, index) => {
    if (Number.isNaN(share)) return;
    const cell = (series.child[index] ?? 0) * series.foodIds.length + (series.food[index] ?? 0);
    const tally = tallies.get(cell) ?? { hits: 0, trials: 0 };
    tallies.set(cell, {
      hits: tally.hits + (share >= 0.5 ? 1 : 0),
      trials: tally.trials + 1,
    });
  });
  const repeated: Tally[] = [...tallies.values()].filter(({ trials }) => trials >= 2);
  const prior = repeated.length < 20 ? null : fitBetaPrior(repeated);
  if (!prior) return USUAL_STRENGTHS.food;
  return Math.min(14, Math.max(1, prior.alpha + prior.beta));
}

/** Days within which two verdicts on a food are taken to share one true liking. */
const PAIR_DAYS_MAX = 35;
/** Pairs that the usual precision is worth. */
const PAIRS_HELD = 80;

/**
 * Trials per tasting, so that the interval is as wide as the estimate was wrong. Two verdicts that
 * follow a forecast share its error but not each other's noise, so the mean product of what they
 * exceed it by is the forecast's squared error; the precision is the one whose beta variance
 * p (1 − p) / (certainty + 1) equals it on average, over all pairs and over the better-known half.
 */
type Forecast = { expected: number; evidence: number; share: number; day: number };

function fitWidth(series: Series, strengths: Strengths): Width {
  const shares = blend(series, strengths.face);
  const before = new Map<number, Forecast>();
  const pairs: Pair[] = [];
  fold(series, shares, strengths, (index, { expected, evidence }) => {
    const cell = (series.child[index] ?? 0) * series.foodIds.length + (series.food[index] ?? 0);
    const [share, day] = [shares[index] ?? 0, series.day[index] ?? 0];
    const last = before.get(cell);
    if (last && day - last.day <= PAIR_DAYS_MAX)
      pairs.push({
        product: (last.share - last.expected) * (share - last.expected),
        spread: last.expected * (1 - last.expected),
        evidence: last.evidence,
      });
    before.set(cell, { expected, evidence: strengths.food + evidence, share, day });
  });
  pairs.sort((a, b) => a.evidence - b.evidence);
  const surer = pairs.slice(Math.floor(pairs.length / 2));
  let best: Width & { miss: number } = {
    precision: strengths.precision,
    surest: 30,
    miss: Infinity,
  };
  for (const surest of SUREST) {
    const precision = matchPrecision(pairs, surest);
    const miss = Math.abs(excess(surer, precision, surest)) + (surest === 30 ? 0 : 1e-4);
    if (miss < best.miss) best = { precision, surest, miss };
  }
  return { precision: best.precision, surest: best.surest };
}

type Width = Pick<Strengths, "precision" | "surest">;
type Pair = { readonly product: number; readonly spread: number; readonly evidence: number };
const SUREST = [4, 8, 15, 30, 60, 1000] as const;

/** Mean squared error seen beyond what the interval allows for, the usual one counted in. */
function excess(pairs: readonly Pair[], precision: number, surest: number): number {
  let total = 0;
  for (const { product, spread, evidence } of pairs) {
    const own = spread / (certainty({ precision, surest }, evidence) + 1);
    total += product - own;
    total +=
      (PAIRS_HELD / pairs.length) * (spread / (certainty(USUAL_STRENGTHS, evidence) + 1) - own);
  }
  return total / (pairs.length + PAIRS_HELD);
}

/** Precision at which nothing is in excess, by halving, within 0.3–6. */
function matchPrecision(pairs: readonly Pair[], surest: number): number {
  let [low, high] = [0.3, 6];
  for (let round = 0; round < 20; round += 1) {
    const middle = (low + high) / 2;
    if (excess(pairs, middle, surest) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function latest(series: Series): Series {
  const { boxes, verdicts } = series;
  if (verdicts.length <= FITTED_VERDICTS_MAX) return series;
  const earliest = verdicts.length - FITTED_VERDICTS_MAX;
  const first = boxes.findIndex((start) => start >= earliest);
  const from = boxes[first] ?? 0;
  return {
    ...series,
    verdicts: verdicts.slice(from),
    child: series.child.subarray(from),
    food: series.food.subarray(from),
    family: series.family.subarray(from),
    day: series.day.subarray(from),
    eaten: series.eaten.subarray(from),
    face: series.face.subarray(from),
    boxes: boxes.subarray(first).map((start) => start - from),
  };
}
