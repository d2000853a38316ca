import { daysBetween, type Day } from "#lib/calendar/index.ts";
import type { Acceptance } from "./estimate.ts";
import { CARERS_STOP, TASTINGS_GUIDE } from "./standing.ts";

/** A food worth offering a child again, and how much it is worth. */
export type TryAgain = {
  readonly acceptance: Acceptance;
  /** Hopeful share (the upper end of the interval) plus what a further tasting is worth, 0–1.3. */
  readonly worth: number;
  /** At the number of offers where most carers stop. */
  readonly isAtStoppingPoint: boolean;
};

/** Days between two offers of the same unsettled food, at least. Common practice, no source. */
const OFFER_GAP_DAYS = 7;
/** Beyond the guide's tastings, a food this unlikely even at best is left in peace. */
const HOPELESS_HIGH = 0.3;

/**
 * Foods to offer again, most worthwhile first: not dependable, not resting, last offered a week ago
 * or more, and fewer than 15 tastings unless still hopeful. "Upper quantile plus a bonus while the
 * tastings are few" is the optimism of bandit rules (Kaufmann, Cappé & Garivier 2012, Bayes-UCB).
 */
export function listTryAgain(met: readonly Acceptance[], today: Day): TryAgain[] {
  return met
    .filter((acceptance) => isDue(acceptance, today))
    .map((acceptance) => {
      const { tastings, offers } = acceptance.history ?? { tastings: 0, offers: 0 };
      const missing = Math.max(0, TASTINGS_GUIDE.to - tastings) / TASTINGS_GUIDE.to;
      return {
        acceptance,
        worth: acceptance.high + 0.3 * missing,
        isAtStoppingPoint: offers >= CARERS_STOP.from && offers <= CARERS_STOP.to,
      };
    })
    .sort((a, b) => b.worth - a.worth || (a.acceptance.foodId < b.acceptance.foodId ? -1 : 1));
}

function isDue({ standing, history, high }: Acceptance, today: Day): boolean {
  if (!history || (standing.kind !== "meeting" && standing.kind !== "mixed")) return false;
  if (daysBetween(history.lastDay, today) < OFFER_GAP_DAYS) return false;
  return history.tastings < TASTINGS_GUIDE.to || high >= HOPELESS_HIGH;
}
