/**
 * Tumours among rats of 70 earlier experiments, and experiment 71 (4 of 14).
 * Source: Tarone 1982, Biometrics 38:215–220, as Table 5.1 of Gelman et al., Bayesian Data Analysis,
 * 3rd ed. Typed from memory; the published moments and estimates below confirm it.
 */
const ROWS =
  "0/20x7 0/19x4 0/18x2 0/17 1/20x4 1/19x2 1/18x2 2/25 2/24 2/23 2/20x6 1/10 5/49 2/19 5/46 3/27 " +
  "2/17 7/49 7/47 3/20x2 2/13 9/48 10/50 4/20x7 10/48 4/19x3 5/22 11/46 12/49 5/20x2 6/23 5/19 6/22 " +
  "6/20x3 16/52 15/47 15/46 9/24";

export const RATS = ROWS.split(" ").flatMap((row) => {
  const [rate = "", times = "1"] = row.split("x");
  const [hits = 0, trials = 0] = rate.split("/").map(Number);
  return Array.from({ length: Number(times) }, () => ({ hits, trials }));
});

export const PUBLISHED = {
  /** BDA3 §5.1: sample mean and standard deviation of the 70 rates, and the beta they give. */
  mean: 0.136,
  deviation: 0.103,
  moments: { alpha: 1.4, beta: 8.6 },
  /** BDA3 §5.1: posterior of experiment 71 under that beta. */
  experiment71: { alpha: 5.4, beta: 18.6, mean: 0.223, deviation: 0.083 },
  /** Vignette of the R package BayesGOF: maximum marginal likelihood of the 70. */
  likeliest: { alpha: 2.304768, beta: 14.079707 },
} as const;
