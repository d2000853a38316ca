import { dayNumber, type Day } from "#lib/calendar/index.ts";
import { betaQuantile } from "./beta.ts";
import { believePlace, blend, discountRate, fold, type Belief, type Sums } from "./fold.ts";
import { fitStrengths } from "./fit.ts";
import { addToHistory, FULL_DAY_SHIFT, type History, type HistoryDraft } from "./history.ts";
import { layOut, type Series } from "./series.ts";
import { standingOf, type Standing } from "./standing.ts";
import type { Verdict } from "./verdict.ts";
import { certainty, type Strengths } from "./strengths.ts";

/** What is expected of one child and one food. */
export type Acceptance = {
  readonly childId: string;
  readonly foodId: string;
  readonly familyId: string;
  /** Share expected to be eaten, 0–1. */
  readonly estimate: number;
  /** Ends of the 80 % interval of that share. */
  readonly low: number;
  readonly high: number;
  /** Tastings' worth of its own evidence left after discounting by age and by full days. */
  readonly evidence: number;
  readonly standing: Standing;
  /** Undefined when the child has not met the food. */
  readonly history: History | undefined;
};

/** A child's day on which little of the whole box was eaten. */
export type FullDay = {
  readonly childId: string;
  readonly day: Day;
  /** Share below what the foods led one to expect, negative. */
  readonly shift: number;
};

/** Everything learned from the verdicts of a series. */
export type Learned = {
  readonly strengths: Strengths;
  /** Acceptance of any child and food, met or not. */
  readonly of: (childId: string, foodId: string, familyId: string) => Acceptance;
  /** One per child and food that met, in order of first meeting. */
  readonly met: readonly Acceptance[];
  readonly fullDays: readonly FullDay[];
  /** The verdicts learned from, oldest first, and the share expected before each. */
  readonly verdicts: readonly Verdict[];
  readonly expected: Float64Array;
};

/** Probability below and above the interval: 80 % lies between. */
const TAILS = [0.1, 0.9] as const;

/**
 * Learns from all verdicts up to and including `today`. Strengths are fitted to the series unless
 * given (they change slowly: a caller may keep them for a while).
 */
export function estimateAll(
  verdicts: readonly Verdict[],
  options: { readonly today: Day; readonly strengths?: Strengths },
): Learned {
  const { today } = options;
  const series = layOut(verdicts.filter(({ day }) => day <= today));
  const strengths = options.strengths ?? fitStrengths(series);
  const histories = new Map<number, HistoryDraft>();
  const firsts: number[] = [];
  const expected = new Float64Array(series.verdicts.length);
  const fullDays: FullDay[] = [];
  const foods = series.foodIds.length;
  const sums = fold(series, blend(series, strengths.face), strengths, (index, reading) => {
    const verdict = series.verdicts[index];
    if (!verdict) return;
    expected[index] = reading.expected;
    const cell = (series.child[index] ?? 0) * foods + (series.food[index] ?? 0);
    const history = histories.get(cell);
    if (!history) firsts.push(index);
    histories.set(cell, addToHistory(history, verdict, reading.shift));
    noteFullDay(fullDays, verdict, reading.shift);
  });
  const answer = (childId: string, foodId: string, familyId: string): Acceptance => {
    const place = {
      child: series.childAt.get(childId) ?? -1,
      food: series.foodAt.get(foodId) ?? -1,
      family: series.familyAt.get(familyId) ?? -1,
    };
    const history =
      place.child < 0 || place.food < 0
        ? undefined
        : histories.get(place.child * foods + place.food);
    const spread = spreadAt(sums, series, place, strengths, today);
    const standing = standingOf(history, spread, today);
    return { childId, foodId, familyId, ...spread, standing, history };
  };
  // The ends of an interval cost more than all the rest, and the same pairs are asked for again.
  const answers = new Map<string, Acceptance>();
  const of = (childId: string, foodId: string, familyId: string): Acceptance => {
    const key = `${childId}\n${foodId}\n${familyId}`;
    const known = answers.get(key) ?? answer(childId, foodId, familyId);
    answers.set(key, known);
    return known;
  };
  const met = firsts.flatMap((index) => {
    const verdict = series.verdicts[index];
    return verdict ? [of(verdict.childId, verdict.foodId, verdict.familyId)] : [];
  });
  return { strengths, of, met, fullDays, verdicts: series.verdicts, expected };
}

function spreadAt(
  sums: Sums,
  series: Series,
  place: { readonly child: number; readonly food: number; readonly family: number },
  strengths: Strengths,
  today: Day,
): { estimate: number; low: number; high: number; evidence: number } {
  const belief: Belief = { family: 0, prior: 0, expected: 0, evidence: 0 };
  const start = series.day[0] ?? dayNumber(today);
  const growth = Math.exp(discountRate(strengths) * (dayNumber(today) - start));
  believePlace(sums, series, place, strengths, growth, belief);
  const strength = certainty(strengths, strengths.food + belief.evidence);
  const posterior = {
    alpha: belief.expected * strength,
    beta: (1 - belief.expected) * strength,
  };
  return {
    estimate: belief.expected,
    // A beta piled up at one end may have its mean outside the middle 80 %: the interval reaches it.
    low: Math.min(belief.expected, betaQuantile(TAILS[0], posterior)),
    high: Math.max(belief.expected, betaQuantile(TAILS[1], posterior)),
    evidence: belief.evidence,
  };
}

function noteFullDay(fullDays: FullDay[], { childId, day }: Verdict, shift: number): void {
  if (shift > FULL_DAY_SHIFT) return;
  const last = fullDays.at(-1);
  if (last?.childId === childId && last.day === day) {
    if (shift < last.shift) fullDays[fullDays.length - 1] = { childId, day, shift };
  } else fullDays.push({ childId, day, shift });
}
