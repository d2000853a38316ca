import type { Series } from "./series.ts";
import { CHILD_PRIOR, type Strengths } from "./strengths.ts";

/**
 * The acceptance model, folded over the verdicts in the order of their days.
 *
 * Let y be the share of one tasting (eaten, blended with the face), w its weight (more where a face was
 * given too), and every sum discounted by 2^(−age / half-life). For child c, food f of family g:
 *
 *     series  m    = (Σ w y + 3) / (Σ w + 5)
 *     child   m_c  = (s_c + 5 m) / (n_c + 5)
 *     family  m_cg = (s_cg − s_cf + k_g m_c) / (n_cg − n_cf + k_g)           its other foods
 *     kin     m_cf = logistic(logit m_cg + Σ (y − m_c'g) / (Σ m_c'g (1 − m_c'g) + k_s / 4))
 *                                                          the other children c' on the same food
 *     food    p_cf = (s_cf + k_f m_cf) / (n_cf + k_f),     Beta(mean p_cf, strength ν e / (1 + e / ê)), e = k_f + n_cf
 *
 * Day effect ("too full that day"): a box is judged by the rest of it. For each item, the mean of
 * y − p over the *other* items of that child's day, times (m − 1) τ / ((m − 1) τ + 1) (best linear
 * unbiased prediction of a random intercept; Robinson 1991, Stat. Science 6:15–32) is taken off y;
 * on a day worse than usual the item also weighs less, since nothing eaten cannot fall further.
 * Leaving the item itself out keeps the estimate rising with what was eaten of it.
 *
 * Weights grow with the day instead of the sums decaying, so each sum is a sufficient statistic:
 * a verdict adds to seven numbers, whatever the age of the series.
 */
export type Sums = {
  readonly eatenCell: Float64Array;
  readonly weightCell: Float64Array;
  readonly eatenFamily: Float64Array;
  readonly weightFamily: Float64Array;
  readonly eatenChild: Float64Array;
  readonly weightChild: Float64Array;
  readonly pullCell: Float64Array;
  readonly infoCell: Float64Array;
  readonly pullFood: Float64Array;
  readonly infoFood: Float64Array;
  readonly total: { eaten: number; weight: number };
};

/** What was expected of one verdict before it was seen, and how its day moved it. */
type Reading = {
  /** p before the day. */
  expected: number;
  /** Effective tastings behind it. */
  evidence: number;
  /** Day effect taken off, in shares: negative on a day when little of the box was eaten. */
  shift: number;
  weight: number;
};

/** Called once per verdict, in order; the reading is reused, so copy what is kept. */
export type Visit = (index: number, reading: Readonly<Reading>) => void;

/** Empty sums for the children, foods and families of a series. */
function emptySums(series: Series): Sums {
  const [c, f, g] = [series.childIds.length, series.foodIds.length, series.familyIds.length];
  const zeros = (size: number): Float64Array => new Float64Array(size);
  return {
    ...{ eatenCell: zeros(c * f), weightCell: zeros(c * f) },
    ...{ eatenFamily: zeros(c * g), weightFamily: zeros(c * g) },
    ...{ eatenChild: zeros(c), weightChild: zeros(c) },
    ...{ pullCell: zeros(c * f), infoCell: zeros(c * f), pullFood: zeros(f), infoFood: zeros(f) },
    total: { eaten: 0, weight: 0 },
  };
}

/** Rate of discounting per day. */
export function discountRate({ halfLifeDays }: Strengths): number {
  return Number.isFinite(halfLifeDays) ? Math.LN2 / halfLifeDays : 0;
}

/** Folds a whole series, each day foretold from the days before it; `shares` holds the blended share of each verdict (see `blend`). */
export function fold(
  series: Series,
  shares: Float64Array,
  strengths: Strengths,
  visit: Visit,
): Sums {
  const sums = emptySums(series);
  const rate = discountRate(strengths);
  const start = series.day[0] ?? 0;
  const beliefs: Belief[] = [];
  const { boxes, day } = series;
  for (let box = 0; box + 1 < boxes.length;) {
    const first = boxes[box] ?? 0;
    const today = day[first] ?? 0;
    const growth = Math.exp(rate * (today - start));
    let next = box;
    while (next + 1 < boxes.length && day[boxes[next] ?? 0] === today) next += 1;
    const end = boxes[next] ?? 0;
    for (let i = first; i < end; i += 1) {
      const belief = (beliefs[i - first] ??= { family: 0, prior: 0, expected: 0, evidence: 0 });
      believe(sums, series, i, strengths, growth, belief);
    }
    for (; box < next; box += 1) {
      const [from, to] = [boxes[box] ?? 0, boxes[box + 1] ?? 0];
      learnBox(sums, series, { shares, strengths, visit, beliefs, first, from, to, growth });
    }
  }
  return sums;
}

/** Share learned from each verdict: eaten and face blended, or the one that is there. */
export function blend(series: Series, faceWeight: number): Float64Array {
  return series.eaten.map((eaten, index) => {
    const face = series.face[index] ?? Number.NaN;
    if (Number.isNaN(face)) return eaten;
    return Number.isNaN(eaten) ? face : (1 - faceWeight) * eaten + faceWeight * face;
  });
}

/** A face alone weighs at least this. */
const FACE_ALONE_MIN = 0.25;

/**
 * Tastings with only the amount seen that one verdict is worth. Let the face repeat half of what sets one
 * sitting apart from the next, and add noise of its own. If f is the weight that serves the blend best,
 * the blend has 1 − f / 2 of the variance of the amount alone, and the face alone has 1 / (2 f) of it.
 */
function precisionOf(series: Series, index: number, { face }: Strengths): number {
  if (Number.isNaN(series.face[index] ?? Number.NaN)) return 1;
  if (Number.isNaN(series.eaten[index] ?? Number.NaN)) return Math.max(FACE_ALONE_MIN, 2 * face);
  return 1 / (1 - face / 2);
}

/** Means of the levels above one cell, and its own. */
export type Belief = { family: number; prior: number; expected: number; evidence: number };

/** Fills in what is believed of one verdict's child and food from the sums so far. */
function believe(
  sums: Sums,
  series: Series,
  index: number,
  strengths: Strengths,
  growth: number,
  belief: Belief,
): void {
  const place = {
    child: series.child[index] ?? 0,
    food: series.food[index] ?? 0,
    family: series.family[index] ?? 0,
  };
  believePlace(sums, series, place, strengths, growth, belief);
}

/** A child, food and family by their numbers in a series; −1: not met yet. */
export type Place = { readonly child: number; readonly food: number; readonly family: number };

/** Fills in what is believed of a child and a food; `growth` is the weight of a verdict of that day. */
export function believePlace(
  sums: Sums,
  series: Series,
  { child, food, family }: Place,
  strengths: Strengths,
  growth: number,
  belief: Belief,
): void {
  const own = CHILD_PRIOR.offers;
  const { total } = sums;
  const seriesMean = (total.eaten + CHILD_PRIOR.eaten * growth) / (total.weight + own * growth);
  const childEaten = child < 0 ? 0 : (sums.eatenChild[child] ?? 0);
  const childWeight = child < 0 ? 0 : (sums.weightChild[child] ?? 0);
  const childMean = (childEaten + own * growth * seriesMean) / (childWeight + own * growth);
  const cell = child < 0 || food < 0 ? -1 : child * series.foodIds.length + food;
  const kin = child < 0 || family < 0 ? -1 : child * series.familyIds.length + family;
  const cellEaten = cell < 0 ? 0 : (sums.eatenCell[cell] ?? 0);
  const cellWeight = cell < 0 ? 0 : (sums.weightCell[cell] ?? 0);
  const kinEaten = kin < 0 ? 0 : Math.max(0, (sums.eatenFamily[kin] ?? 0) - cellEaten);
  const kinWeight = kin < 0 ? 0 : Math.max(0, (sums.weightFamily[kin] ?? 0) - cellWeight);
  const kg = strengths.family * growth;
  belief.family = inside((kinEaten + kg * childMean) / (kinWeight + kg));
  belief.prior = belief.family;
  if (food >= 0) {
    const pull = (sums.pullFood[food] ?? 0) - (cell < 0 ? 0 : (sums.pullCell[cell] ?? 0));
    const info = (sums.infoFood[food] ?? 0) - (cell < 0 ? 0 : (sums.infoCell[cell] ?? 0));
    const step = pull / (Math.max(0, info) + (strengths.siblings * growth) / 4);
    if (step !== 0) belief.prior = inside(shiftLogit(belief.family, step));
  }
  const kf = strengths.food * growth;
  belief.expected = (cellEaten + kf * belief.prior) / (cellWeight + kf);
  belief.evidence = cellWeight / growth;
}

/** Prior means stay off the ends, where one surprise would cost without bound. */
function inside(mean: number): number {
  return Math.min(0.96, Math.max(0.04, mean));
}

function shiftLogit(mean: number, step: number): number {
  const odds = (mean / (1 - mean)) * Math.exp(Math.min(2, Math.max(-2, step)));
  return odds / (1 + odds);
}

/** A day this much worse than expected weighs at least this. */
const WEIGHT_MIN = 0.25;

type Box = {
  readonly shares: Float64Array;
  readonly strengths: Strengths;
  readonly visit: Visit;
  readonly beliefs: readonly Belief[];
  /** First verdict of the day, which the beliefs start at. */
  readonly first: number;
  readonly from: number;
  readonly to: number;
  readonly growth: number;
};

const reading: Reading = { expected: 0, evidence: 0, shift: 0, weight: 1 };

function learnBox(sums: Sums, series: Series, box: Box): void {
  const others = box.to - box.from - 1;
  const trust = (others * box.strengths.day) / (others * box.strengths.day + 1);
  let surprise = 0;
  for (let i = box.from; i < box.to; i += 1)
    surprise += (box.shares[i] ?? 0) - (box.beliefs[i - box.first]?.expected ?? 0);
  for (let i = box.from; i < box.to; i += 1) {
    const belief = box.beliefs[i - box.first];
    if (!belief) continue;
    const share = box.shares[i] ?? 0;
    const rest = surprise - (share - belief.expected);
    const shift = others > 0 ? (trust * rest) / others : 0;
    reading.expected = belief.expected;
    reading.evidence = belief.evidence;
    reading.shift = shift;
    reading.weight =
      precisionOf(series, i, box.strengths) * Math.max(WEIGHT_MIN, Math.min(1, 1 + shift));
    box.visit(i, reading);
    add(
      sums,
      series,
      i,
      Math.min(1, Math.max(0, share - shift)),
      reading.weight * box.growth,
      belief,
    );
  }
}

function add(
  sums: Sums,
  series: Series,
  index: number,
  share: number,
  weight: number,
  belief: Belief,
): void {
  const child = series.child[index] ?? 0;
  const food = series.food[index] ?? 0;
  const cell = child * series.foodIds.length + food;
  const kin = child * series.familyIds.length + (series.family[index] ?? 0);
  bump(sums.eatenCell, cell, weight * share);
  bump(sums.weightCell, cell, weight);
  bump(sums.eatenFamily, kin, weight * share);
  bump(sums.weightFamily, kin, weight);
  bump(sums.eatenChild, child, weight * share);
  bump(sums.weightChild, child, weight);
  const pull = weight * (share - belief.family);
  const info = weight * belief.family * (1 - belief.family);
  bump(sums.pullCell, cell, pull);
  bump(sums.infoCell, cell, info);
  bump(sums.pullFood, food, pull);
  bump(sums.infoFood, food, info);
  sums.total.eaten += weight * share;
  sums.total.weight += weight;
}

function bump(column: Float64Array, at: number, by: number): void {
  column[at] = (column[at] ?? 0) + by;
}
