import type { Day } from "#lib/calendar/index.ts";
import type { Learned } from "./estimate.ts";
import { isTasting, type Eaten } from "./verdict.ts";

/** One point on the path of a food. */
export type PathPoint = {
  readonly day: Day;
  readonly eaten: Eaten | null;
  readonly face: number | null;
  /** Tastings so far, this one included. */
  readonly tasting: number;
  /** Share that was expected before it. */
  readonly expected: number;
};

/** The path of one food with one child over its tastings, oldest first. */
export function pathOf(learned: Learned, childId: string, foodId: string): PathPoint[] {
  let tasting = 0;
  const points: PathPoint[] = [];
  learned.verdicts.forEach((verdict, index) => {
    if (verdict.childId !== childId || verdict.foodId !== foodId) return;
    if (isTasting(verdict)) tasting += 1;
    const { day, eaten, face } = verdict;
    points.push({ day, eaten, face, tasting, expected: learned.expected[index] ?? Number.NaN });
  });
  return points;
}
