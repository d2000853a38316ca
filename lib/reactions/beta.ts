import quantile from "@stdlib/stats-base-dists-beta-quantile";

/** A count of successes among trials. */
export type Tally = { readonly hits: number; readonly trials: number };

/** A beta distribution: mean α / (α + β), strength α + β. */
export type BetaPrior = { readonly alpha: number; readonly beta: number };

/** Value below which a beta-distributed share lies with probability `p`. Library: @stdlib. */
export function betaQuantile(p: number, { alpha, beta }: BetaPrior): number {
  return quantile(p, alpha, beta);
}

/** Posterior after a tally: conjugacy (Gelman et al., Bayesian Data Analysis, 3rd ed., §2.4). */
export function updateBeta({ alpha, beta }: BetaPrior, { hits, trials }: Tally): BetaPrior {
  return { alpha: alpha + hits, beta: beta + trials - hits };
}

/**
 * Beta with the mean and variance of the observed rates (BDA3 §5.1, method of moments).
 * Null when the rates do not vary, or vary more than any beta does.
 */
export function betaFromMoments(tallies: readonly Tally[]): BetaPrior | null {
  const rates = tallies.filter(({ trials }) => trials > 0).map(({ hits, trials }) => hits / trials);
  if (rates.length < 2) return null;
  const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
  const squares = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0);
  const variance = squares / (rates.length - 1);
  const strength = (mean * (1 - mean)) / variance - 1;
  if (!(strength > 0) || !Number.isFinite(strength)) return null;
  return { alpha: mean * strength, beta: (1 - mean) * strength };
}

/**
 * Log marginal likelihood of whole-number tallies under a beta prior, without the binomial
 * coefficients: Σ log B(α + y, β + n − y) / B(α, β), each ratio written as a product of
 * one-step predictions (Pólya's urn), which is exact and needs no gamma function.
 */
export function betaBinomialLogLikelihood(prior: BetaPrior, tallies: readonly Tally[]): number {
  let total = 0;
  for (const { hits, trials } of tallies) {
    for (let j = 0; j < hits; j += 1) total += Math.log(prior.alpha + j);
    for (let j = 0; j < trials - hits; j += 1) total += Math.log(prior.beta + j);
    for (let j = 0; j < trials; j += 1) total -= Math.log(prior.alpha + prior.beta + j);
  }
  return total;
}

/**
 * Beta prior that makes whole-number tallies most likely: Newton steps on the logs of α and β,
 * halved until they help. Null where `betaFromMoments` is, since then there is no peak to climb.
 */
export function fitBetaPrior(tallies: readonly Tally[]): BetaPrior | null {
  const start = betaFromMoments(tallies);
  if (!start) return null;
  let best: BetaPrior = start;
  let likelihood = betaBinomialLogLikelihood(best, tallies);
  for (let round = 0; round < 60; round += 1) {
    const [stepA, stepB] = newtonStep(best, tallies);
    let scale = 1;
    let moved = false;
    while (scale > 1e-6 && !moved) {
      const next: BetaPrior = {
        alpha: clampStrength(best.alpha * Math.exp(scale * stepA)),
        beta: clampStrength(best.beta * Math.exp(scale * stepB)),
      };
      const reached = betaBinomialLogLikelihood(next, tallies);
      if (reached > likelihood) {
        moved = reached - likelihood > 1e-12;
        best = next;
        likelihood = reached;
      }
      scale /= 2;
    }
    if (!moved) break;
  }
  return best;
}

function clampStrength(value: number): number {
  return Math.min(1e6, Math.max(1e-6, value));
}

/** Ascent direction in (log α, log β): Newton's where the curvature allows, else the gradient. */
function newtonStep({ alpha, beta }: BetaPrior, tallies: readonly Tally[]): [number, number] {
  let [ga, gb, haa, hbb, hab] = [0, 0, 0, 0, 0];
  for (const { hits, trials } of tallies) {
    for (let j = 0; j < hits; j += 1) {
      ga += 1 / (alpha + j);
      haa -= 1 / (alpha + j) ** 2;
    }
    for (let j = 0; j < trials - hits; j += 1) {
      gb += 1 / (beta + j);
      hbb -= 1 / (beta + j) ** 2;
    }
    for (let j = 0; j < trials; j += 1) {
      ga -= 1 / (alpha + beta + j);
      gb -= 1 / (alpha + beta + j);
      hab += 1 / (alpha + beta + j) ** 2;
    }
  }
  haa += hab;
  hbb += hab;
  const gradA = alpha * ga;
  const gradB = beta * gb;
  const aa = alpha * alpha * haa + gradA;
  const bb = beta * beta * hbb + gradB;
  const ab = alpha * beta * hab;
  const determinant = aa * bb - ab * ab;
  if (aa < 0 && determinant > 0)
    return [
      bound((-bb * gradA + ab * gradB) / determinant),
      bound((ab * gradA - aa * gradB) / determinant),
    ];
  return [bound(gradA), bound(gradB)];
}

function bound(step: number): number {
  return Math.min(2, Math.max(-2, step));
}
