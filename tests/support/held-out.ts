import { addDays, type Day } from "#lib/calendar/index.ts";
import { eatenShare, estimateAll, logLoss, type Verdict } from "#lib/reactions/index.ts";
import type { Rival } from "./rivals.ts";
import { simulate, SIMULATED_FROM, USUAL_SHAPE, type TasteModel } from "./simulated-series.ts";

/** A simulated series cut in two: what is known, and the four weeks after it. */
export type HeldOut = {
  readonly past: readonly Verdict[];
  readonly future: readonly Verdict[];
  readonly truth: ReadonlyMap<Verdict, number>;
  /** The last day that is known. */
  readonly today: Day;
};

const WEEKS_AFTER = 4;

/** Simulates a series and holds the last four weeks out. */
export function heldOut(model: TasteModel, seed: string, weeks: number): HeldOut {
  const shape = { ...USUAL_SHAPE, seed, weeks: weeks + WEEKS_AFTER };
  const { verdicts, truth } = simulate(model, shape);
  const today = addDays(SIMULATED_FROM, weeks * 7 - 1);
  return {
    past: verdicts.filter((verdict) => verdict.day <= today),
    future: verdicts.filter((verdict) => verdict.day > today),
    truth,
    today,
  };
}

/** Mean held-out log-loss of the share eaten, in nats per verdict. */
export function lossOf(rival: Rival, cases: readonly HeldOut[]): number {
  const all = cases.map((own) => lossInOne(rival, own));
  const count = all.reduce((sum, one) => sum + one.count, 0);
  return all.reduce((sum, one) => sum + one.loss, 0) / count;
}

type Loss = { readonly loss: number; readonly count: number };
/** A rival is asked once for each series, however often it is compared. */
const asked = new WeakMap<HeldOut, Map<Rival, Loss>>();

function lossInOne(rival: Rival, own: HeldOut): Loss {
  const known = asked.get(own) ?? new Map<Rival, Loss>();
  asked.set(own, known);
  const before = known.get(rival);
  if (before) return before;
  const foretell = rival(own.past, own.today);
  let [loss, count] = [0, 0];
  for (const verdict of own.future) {
    if (verdict.eaten === null) continue;
    loss += logLoss(eatenShare(verdict.eaten), foretell(verdict));
    count += 1;
  }
  known.set(rival, { loss, count });
  return { loss, count };
}

/** How much more one rival loses than another, series by series, with the standard error of that mean. */
export function differenceOf(
  one: Rival,
  other: Rival,
  cases: readonly HeldOut[],
): { readonly mean: number; readonly error: number } {
  const differences = cases.map((own) => lossOf(one, [own]) - lossOf(other, [own]));
  const mean = differences.reduce((sum, value) => sum + value, 0) / differences.length;
  const squares = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const error = Math.sqrt(squares / (differences.length - 1) / differences.length);
  return { mean, error };
}

/** Eaten beyond what was foretold, in points, by how much was foretold in so many equal steps. */
export function calibrationOf(
  cases: readonly HeldOut[],
  steps: number,
): readonly { readonly points: number; readonly count: number }[] {
  const bins = Array.from({ length: steps }, () => ({ surplus: 0, count: 0 }));
  for (const { past, future, today } of cases) {
    const { of } = estimateAll(past, { today });
    for (const { childId, foodId, familyId, eaten } of future) {
      const { estimate } = of(childId, foodId, familyId);
      const bin = bins[Math.min(steps - 1, Math.floor(estimate * steps))];
      if (!bin || eaten === null) continue;
      bin.surplus += eatenShare(eaten) - estimate;
      bin.count += 1;
    }
  }
  return bins.map(({ surplus, count }) => ({ points: (100 * surplus) / count, count }));
}
