/** How many records the usual minutes count for. */
const USUAL_WEIGHT = 3;
/** Older records than this many are left out: hands get faster. */
const RECORDS_MAX = 10;

/**
 * The minutes to expect of a step: the mean of the latest ten records, shrunk toward the usual minutes
 * as if these had been recorded three times: `(3 · usual + Σ recorded) ÷ (3 + n)`, the posterior mean of
 * a normal mean under a normal prior worth three records (Gelman et al., Bayesian Data Analysis, 3rd
 * ed., §2.5; the weight of three is common practice, no source). Whole minutes, at least one where the
 * usual are. `recorded` is newest first.
 */
export function learnMinutes(
  usual: number,
  recorded: readonly number[],
): { readonly minutes: number; readonly recordings: number } {
  const latest = recorded.slice(0, RECORDS_MAX);
  const sum = latest.reduce((total, minutes) => total + minutes, USUAL_WEIGHT * usual);
  const minutes = Math.round(sum / (USUAL_WEIGHT + latest.length));
  return { minutes: Math.max(usual > 0 ? 1 : 0, minutes), recordings: latest.length };
}
