/**
 * Eighteen batters of 1970: hits in the first 45 times at bat, and the average over the rest of the
 * season. Source: Efron & Morris 1975, JASA 70:311–319, Table 1; 1977, Scientific American 236(5).
 * Typed from memory, without the names; the published mean, factor and efficiency confirm it.
 */
export const BATTERS = [
  [18, 0.346],
  [17, 0.298],
  [16, 0.276],
  [15, 0.222],
  [14, 0.273],
  [14, 0.27],
  [13, 0.263],
  [12, 0.21],
  [11, 0.269],
  [11, 0.23],
  [10, 0.264],
  [10, 0.256],
  [10, 0.303],
  [10, 0.264],
  [10, 0.226],
  [9, 0.285],
  [8, 0.316],
  [7, 0.2],
].map(([hits = 0, season = 0]) => ({ hits, season }));

export const PUBLISHED = {
  /** 1977: grand mean, shrinking factor, the best batter's estimate, ratio of total squared errors. */
  mean: 0.265,
  kept: 0.212,
  best: 0.294,
  errorRatio: 3.5,
} as const;
