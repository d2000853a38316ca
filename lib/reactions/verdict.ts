import type { Day } from "#lib/calendar/index.ts";

/** Quarters eaten, 0 none … 4 all (quarter-waste method, Hanks, Wansink & Just 2014, JAND 114:470–474). */
export type Eaten = 0 | 1 | 2 | 3 | 4;

/** What one child did with, and said of, one packed item. */
export type Verdict = {
  readonly childId: string;
  readonly foodId: string;
  /** Kin of the food: the same food in another form shares it. */
  readonly familyId: string;
  readonly day: Day;
  /** Null when nobody saw how much came back. */
  readonly eaten: Eaten | null;
  /** 0–100 on the common axis of the face scales; null when not asked. */
  readonly face: number | null;
  /** How it was prepared, when that differs from the food's usual form; counted apart. */
  readonly preparation?: string;
};

/** Share eaten, 0–1. */
export function eatenShare(eaten: Eaten): number {
  return eaten / 4;
}

/** Share that came back, 0–1: the plate waste. */
export function wasteShare(eaten: Eaten): number {
  return 1 - eaten / 4;
}

/** The nearest step of the quarter scale to a share, halves upward; shares beyond 0–1 are cut off. */
export function eatenFromShare(share: number): Eaten {
  return Math.round(Math.min(1, Math.max(0, share)) * 4) as Eaten;
}

/** Whether anything passed the lips: a quarter or more, or a face given where no amount was seen. */
export function isTasting(verdict: Pick<Verdict, "eaten" | "face">): boolean {
  return verdict.eaten === null ? verdict.face !== null : verdict.eaten > 0;
}

/** Whether the verdict says anything that can be learned from. */
export function isInformative(verdict: Pick<Verdict, "eaten" | "face">): boolean {
  return verdict.eaten !== null || verdict.face !== null;
}
