import { addDays, day } from "#lib/calendar/index.ts";
import { eatenShare, estimateAll, logLoss } from "#lib/reactions/index.ts";
import { heldOut, lossOf, type HeldOut } from "#tests/support/held-out.ts";
import {
  childMean,
  lastVerdict,
  learned,
  nestedMeans,
  rawMean,
  type Rival,
} from "#tests/support/rivals.ts";
import {
  DRIFTING,
  HOUSEHOLD,
  simulate,
  STABLE,
  USUAL_SHAPE,
} from "#tests/support/simulated-series.ts";

const MODELS = { stable: STABLE, drifting: DRIFTING, household: HOUSEHOLD };
const RIVALS: Readonly<Record<string, Rival>> = {
  "child's mean": childMean,
  "last verdict": lastVerdict,
  "raw item mean": rawMean,
  "nested means": nestedMeans(Infinity),
  "nested, 240 d": nestedMeans(240),
  "what we do": learned,
};
const SERIES = 12;

/** Prints held-out log-loss by rival, calibration, coverage, and the time of ten years. */
export function benchReactions(print: (line: string) => void): void {
  print("Held-out log-loss of the share eaten, nats per verdict; lower is better.");
  print(["model", "weeks", ...Object.keys(RIVALS), "oracle"].join(" | "));
  const all: HeldOut[] = [];
  for (const [name, model] of Object.entries(MODELS))
    for (const weeks of [4, 12, 52]) {
      const cases = Array.from({ length: SERIES }, (_, i) => heldOut(model, `series-${i}`, weeks));
      all.push(...cases);
      const losses = Object.values(RIVALS).map((rival) => lossOf(rival, cases));
      const cells = [...losses, oracleLoss(cases)].map((loss) => loss.toFixed(4));
      print([name, weeks, ...cells].join(" | "));
    }
  printCalibration(all, print);
  printSpeed(print);
}

function oracleLoss(cases: readonly HeldOut[]): number {
  const losses = cases.flatMap(({ future, truth }) =>
    future.map((v) => logLoss(eatenShare(v.eaten ?? 2), truth.get(v) ?? 0.5)),
  );
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}

function printCalibration(cases: readonly HeldOut[], print: (line: string) => void): void {
  const bins = Array.from({ length: 10 }, () => ({ foretold: 0, eaten: 0, count: 0 }));
  let [inside, count] = [0, 0];
  for (const { past, future, truth, today } of cases) {
    const { of } = estimateAll(past, { today });
    for (const v of future) {
      const { estimate, low, high } = of(v.childId, v.foodId, v.familyId);
      const share = truth.get(v) ?? 0.5;
      if (low <= share && share <= high) inside += 1;
      count += 1;
      const bin = bins[Math.min(9, Math.floor(estimate * 10))];
      if (!bin) continue;
      bin.foretold += estimate;
      bin.eaten += eatenShare(v.eaten ?? 2);
      bin.count += 1;
    }
  }
  print("Calibration, all models and lengths: foretold, eaten, verdicts.");
  for (const { foretold, eaten, count: n } of bins)
    if (n > 0) print(`${(foretold / n).toFixed(3)} | ${(eaten / n).toFixed(3)} | ${n}`);
  print(`80 % intervals that hold the true share: ${((100 * inside) / count).toFixed(1)} %`);
}

function printSpeed(print: (line: string) => void): void {
  const shape = { ...USUAL_SHAPE, children: 3, foods: 300, families: 60, itemsPerDay: 7 };
  const { verdicts } = simulate(HOUSEHOLD, { ...shape, seed: "ten years", weeks: 520 });
  const today = addDays(day("2025-01-06"), 3650);
  const { strengths } = estimateAll(verdicts, { today });
  for (const [label, options] of [
    ["strengths fitted", { today }],
    ["strengths kept", { today, strengths }],
  ] as const) {
    const start = performance.now();
    const { met } = estimateAll(verdicts, options);
    const ms = Math.round(performance.now() - start);
    print(`${verdicts.length} verdicts, ${met.length} foods × children, ${label}: ${ms} ms`);
  }
}
