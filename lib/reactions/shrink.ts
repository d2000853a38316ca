/** A measured value and the variance of its error. */
export type Measured = { readonly value: number; readonly variance: number };

/** Values drawn toward their common mean. */
export type Shrunk = {
  readonly mean: number;
  /** Share of each deviation that is kept, 0–1, in the order given. */
  readonly kept: readonly number[];
  readonly values: readonly number[];
  /** Variance of the true values around the mean, as estimated. */
  readonly spread: number;
};

/**
 * Empirical-Bayes shrinkage of a few measured values toward their mean. With equal variances, and
 * values that vary more than their errors explain, this is the estimator of Efron & Morris (1975, JASA 70:311–319; 1977, Sci. Am. 236(5)):
 * kept = 1 − (k − 3) σ² / Σ (y − ȳ)². With unequal ones, Morris (1983, JASA 78:47–55): weights
 * 1 / (σᵢ² + τ²), τ² from the weighted moments, and the factor (k − 3) / (k − 1) for having
 * estimated it. Three values or fewer say nothing of their own spread: they are left as they are.
 */
export function shrinkToMean(measured: readonly Measured[]): Shrunk {
  const count = measured.length;
  let spread = 0;
  let mean = weightedMean(measured, spread);
  if (count <= 3)
    return {
      mean,
      kept: measured.map(() => 1),
      values: measured.map(({ value }) => value),
      spread,
    };
  for (let round = 0; round < 200; round += 1) {
    const next = spreadAround(measured, mean, spread);
    const settled = Math.abs(next - spread) <= 1e-14 + 1e-12 * spread;
    spread = next;
    mean = weightedMean(measured, spread);
    if (settled) break;
  }
  const correction = (count - 3) / (count - 1);
  const kept = measured.map(({ variance }) =>
    variance + spread > 0 ? Math.max(0, 1 - (correction * variance) / (variance + spread)) : 1,
  );
  const values = measured.map(({ value }, index) => mean + (kept[index] ?? 0) * (value - mean));
  return { mean, kept, values, spread };
}

function weightedMean(measured: readonly Measured[], spread: number): number {
  let [top, bottom] = [0, 0];
  for (const { value, variance } of measured) {
    const weight = 1 / Math.max(1e-12, variance + spread);
    top += weight * value;
    bottom += weight;
  }
  return bottom > 0 ? top / bottom : 0;
}

function spreadAround(measured: readonly Measured[], mean: number, spread: number): number {
  const count = measured.length;
  let [top, bottom] = [0, 0];
  for (const { value, variance } of measured) {
    const weight = 1 / Math.max(1e-12, variance + spread);
    top += weight * ((count / (count - 1)) * (value - mean) ** 2 - variance);
    bottom += weight;
  }
  return Math.max(0, top / bottom);
}
