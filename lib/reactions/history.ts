import type { Day } from "#lib/calendar/index.ts";
import { isTasting, type Verdict } from "./verdict.ts";

/** What happened between one child and one food, counted. */
export type History = {
  /** Times it was in the box. */
  readonly offers: number;
  /** Times any of it was tasted. */
  readonly tastings: number;
  /** Tastings by preparation; the food's usual form stands under "". */
  readonly tastingsBy: ReadonlyMap<string, number>;
  readonly firstDay: Day;
  readonly lastDay: Day;
  /** Latest offers in a row that came back (nearly) whole, days when the whole box did left out. */
  readonly refusalsRunning: number;
  /** Day of the latest such refusal; null when there was none. */
  readonly lastRefusal: Day | null;
  /** Refusals put down to the day: the rest of the box came back too. */
  readonly fullDays: number;
};

/** A history while it is being counted. */
export type HistoryDraft = { -readonly [Key in keyof History]: History[Key] } & {
  tastingsBy: Map<string, number>;
};

/** A day when at least this much less than usual was eaten of everything else. */
export const FULL_DAY_SHIFT = -0.2;

/** Adds one verdict to a history; `shift` is the day effect found in `fold`. */
export function addToHistory(
  history: HistoryDraft | undefined,
  verdict: Verdict,
  shift: number,
): HistoryDraft {
  const { day } = verdict;
  const next = history ?? {
    ...{ offers: 0, tastings: 0, tastingsBy: new Map<string, number>(), firstDay: day },
    ...{ lastDay: day, refusalsRunning: 0, lastRefusal: null, fullDays: 0 },
  };
  next.offers += 1;
  next.lastDay = day;
  if (isTasting(verdict)) {
    const preparation = verdict.preparation ?? "";
    next.tastings += 1;
    next.tastingsBy.set(preparation, (next.tastingsBy.get(preparation) ?? 0) + 1);
  }
  if (!isRefusal(verdict)) next.refusalsRunning = 0;
  else if (shift <= FULL_DAY_SHIFT) next.fullDays += 1;
  else {
    next.refusalsRunning += 1;
    next.lastRefusal = day;
  }
  return next;
}

/** Nothing eaten, or no more than a quarter with a face below the middle. */
export function isRefusal({ eaten, face }: Pick<Verdict, "eaten" | "face">): boolean {
  if (eaten === null) return face !== null && face < 25;
  return eaten === 0 || (eaten === 1 && face !== null && face < 50);
}
