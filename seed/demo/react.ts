import { drawBeta, drawNormal, type Random } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { eatenFromShare, nearestFace } from "#lib/reactions/index.ts";
import type { DemoChild, DemoReaction } from "./records.ts";
import { moodOf, type QuoteBook } from "./quotes.ts";
import { logistic, type Taste } from "./taste.ts";

/** Keeps count of tastings while the days go by, which the tastes depend on. */
export type Tastings = Map<string, number>;

/** How a child's day was, before any food. */
export type DayMood = { readonly shift: number; readonly isFull: boolean };

/** Draws the mood of one child's day: usual, or full one day in 25. */
export function drawMood(random: Random): DayMood {
  const isFull = random.next() < 0.04;
  return { shift: 0.25 * drawNormal(random) - (isFull ? 2.6 : 0), isFull };
}

/** A packed item as a child meets it. */
export type Met = {
  readonly itemId: string;
  readonly food: Food;
  readonly part: string;
  readonly on: Day;
  /** Utility that its tricks add. */
  readonly tricks: number;
};

/** Draws a child's verdict on an item from the taste model. */
export function react(
  met: Met,
  child: DemoChild,
  mood: DayMood,
  taste: Taste,
  tastings: Tastings,
  random: Random,
  book: QuoteBook | null,
): DemoReaction {
  const key = `${child.id} ${met.food.id}`;
  const known = tastings.get(key) ?? 0;
  const liking = taste.utility(child.id, met.food.id, met.on, known) + met.tricks;
  const mean = logistic(liking + mood.shift);
  const share = drawBeta(random, 3 * mean, 3 * (1 - mean));
  const eaten = eatenFromShare(share);
  if (eaten > 0) tastings.set(key, known + 1);
  // The face follows the liking more than the amount: on a full day they part.
  const felt = 0.6 * logistic(1.3 * liking) + 0.4 * share + 0.1 * drawNormal(random);
  const face = random.next() < 0.9 ? nearestFace(100 * felt, child.facePoints).value : null;
  const isQuoted = book !== null && random.next() < quoteChance(eaten, face);
  const said = moodOf(eaten, face, mood.isFull);
  return {
    ...{ itemId: met.itemId, childId: child.id, eaten, face },
    facePoints: face === null ? null : child.facePoints,
    quote: isQuoted ? book.say(random, child.id, said, met.food, met.part) : "",
    ...{ note: "", loggedAt: `${met.on}T15:${minuteOf(random)}:00.000Z`, revision: 1 },
  };
}

/** Strong verdicts are quoted more often than middling ones. */
function quoteChance(eaten: number, face: number | null): number {
  return eaten === 0 || (face ?? 50) >= 90 || (face ?? 50) <= 20 ? 0.4 : 0.2;
}

function minuteOf(random: Random): string {
  return String(40 + random.below(20));
}
