import { addDays, type Day } from "#lib/calendar/index.ts";
import type { History } from "./history.ts";

/** A child and a food, in the words of the design page. */
export type Standing =
  | { readonly kind: "unmet" }
  | { readonly kind: "meeting" }
  | { readonly kind: "dependable" }
  | { readonly kind: "mixed" }
  | { readonly kind: "resting"; readonly until: Day };
export type StandingKind = Standing["kind"];

/** An estimate as far as a standing depends on it: shares 0–1, the ends of an 80 % interval. */
export type Spread = { readonly estimate: number; readonly low: number; readonly high: number };

/**
 * Published numbers of tastings before liking moved: about 8–10 (Birch & Marlin 1982, Appetite
 * 3:353–360, as read by textbooks), 8 daily (Wardle et al. 2003, EJCN 57:341–348), 14 (Wardle et al.
 * 2003, Appetite 40:155–162), 15 (Sullivan & Birch 1990, Dev. Psychol. 26:546–551, and only for the
 * version tasted). A guide for planning: in older children liking can also fall (Food Qual. Prefer. 2012).
 */
export const TASTINGS_GUIDE = { from: 8, to: 15 } as const;

/** Most carers stop after so many offers (Carruth et al. 2004, JADA 104(1 Suppl):S57–64). */
export const CARERS_STOP = { from: 3, to: 5 } as const;

/** Days a refused food stays out: after one refusal, two in a row, more. Common practice, no source. */
export const REST_DAYS = [14, 21, 28] as const;

/** Dependable: so many tastings, and four times in five at least this share is to be expected. */
export const DEPENDABLE = { tastings: 3, low: 0.6 } as const;

/** Where a child stands with a food on a day. */
export function standingOf(history: History | undefined, spread: Spread, today: Day): Standing {
  if (!history) return { kind: "unmet" };
  const isTrusted = history.tastings >= DEPENDABLE.tastings && spread.low >= DEPENDABLE.low;
  const until = restsUntil(history, isTrusted);
  if (until !== null && until > today) return { kind: "resting", until };
  if (isTrusted) return { kind: "dependable" };
  return { kind: history.tastings < TASTINGS_GUIDE.from ? "meeting" : "mixed" };
}

/** The day a refused food may be tried again; null when the latest offer was not refused. */
function restsUntil(history: History, isTrusted: boolean): Day | null {
  const { refusalsRunning, lastRefusal } = history;
  // A dependable food is allowed one bad day.
  if (lastRefusal === null || refusalsRunning < (isTrusted ? 2 : 1)) return null;
  const days = REST_DAYS[Math.min(refusalsRunning, REST_DAYS.length) - 1] ?? REST_DAYS[0];
  return addDays(lastRefusal, days);
}
