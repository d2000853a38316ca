import { addDays, day } from "#lib/calendar/index.ts";
import { eatenShare, estimateAll, logLoss } from "#lib/reactions/index.ts";
import {
  calibrationOf,
  differenceOf,
  heldOut,
  lossOf,
  type HeldOut,
} from "#tests/support/held-out.ts";
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
const SERIES = 24;

/** One measured figure. */
type Figure = { name: string; value: number; unit: string };

/** Held-out log-loss by rival (lower is better), calibration, coverage, and the time of ten years. */
export function benchReactions(): Figure[] {
  const figures: Figure[] = [];
  const all: HeldOut[] = [];
  for (const [name, model] of Object.entries(MODELS))
    for (const weeks of [4, 12, 52]) {
      const cases = Array.from({ length: SERIES }, (_, i) => heldOut(model, `series-${i}`, weeks));
      all.push(...cases);
      const losses = Object.entries(RIVALS).map(
        ([rival, of]) => [rival, lossOf(of, cases)] as const,
      );
      for (const [rival, loss] of [
        ...losses,
        ["the taste model itself", oracleLoss(cases)] as const,
      ])
        figures.push({
          name: `log-loss, ${name}, ${weeks} weeks, ${rival}`,
          value: loss,
          unit: "nats",
        });
      figures.push(...differences(name, weeks, cases));
    }
  return [...figures, ...calibration(all), ...speed()];
}

function oracleLoss(cases: readonly HeldOut[]): number {
  const losses = cases.flatMap(({ future, truth }) =>
    future.map((v) => logLoss(eatenShare(v.eaten ?? 2), truth.get(v) ?? 0.5)),
  );
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}

/** Ours against a rival, series by series; below nothing is better. */
function differences(name: string, weeks: number, cases: readonly HeldOut[]): Figure[] {
  return Object.entries(RIVALS)
    .filter(([, of]) => of !== learned)
    .flatMap(([rival, of]) => {
      const { mean, error } = differenceOf(learned, of, cases);
      const what = `log-loss, ${name}, ${weeks} weeks, ours less ${rival}`;
      return [
        { name: what, value: 1000 * mean, unit: "thousandths of a nat" },
        { name: `${what}, standard error`, value: 1000 * error, unit: "thousandths of a nat" },
      ];
    });
}

function calibration(cases: readonly HeldOut[]): Figure[] {
  const bins = calibrationOf(cases, 10).flatMap(({ points, count }, index) =>
    count === 0
      ? []
      : [
          {
            name: `eaten beyond what was foretold, bin ${index / 10}–${(index + 1) / 10}, n = ${count}`,
            value: points,
            unit: "points",
          },
        ],
  );
  let [inside, count] = [0, 0];
  for (const { past, future, truth, today } of cases) {
    const { of } = estimateAll(past, { today });
    for (const v of future) {
      const { low, high } = of(v.childId, v.foodId, v.familyId);
      const share = truth.get(v) ?? 0.5;
      if (low <= share && share <= high) inside += 1;
      count += 1;
    }
  }
  const held = { name: "80 % intervals that hold the true share", value: (100 * inside) / count };
  return [...bins, { ...held, unit: "%" }];
}

function speed(): Figure[] {
  const shape = { ...USUAL_SHAPE, children: 3, foods: 300, families: 60, itemsPerDay: 7 };
  const { verdicts } = simulate(HOUSEHOLD, { ...shape, seed: "ten years", weeks: 520 });
  const today = addDays(day("2025-01-06"), 3650);
  const { strengths } = estimateAll(verdicts, { today });
  const time = (options: Parameters<typeof estimateAll>[1]): number => {
    const start = performance.now();
    estimateAll(verdicts, options);
    return performance.now() - start;
  };
  const name = `all estimates from ${verdicts.length} verdicts`;
  return [
    { name: `${name}, strengths fitted`, value: time({ today }), unit: "ms" },
    { name: `${name}, strengths kept`, value: time({ today, strengths }), unit: "ms" },
  ];
}
