import { addDays, type Day } from "#lib/calendar/index.ts";
import { eatenShare, logLoss, type Verdict } from "#lib/reactions/index.ts";
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
  let [loss, count] = [0, 0];
  for (const { past, future, today } of cases) {
    const foretell = rival(past, today);
    for (const verdict of future) {
      if (verdict.eaten === null) continue;
      loss += logLoss(eatenShare(verdict.eaten), foretell(verdict));
      count += 1;
    }
  }
  return loss / count;
}
