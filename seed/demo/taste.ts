import { drawNormal, hash32, randomFrom } from "#lib/base/index.ts";
import { daysBetween, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";

/**
 * The taste model behind the demo's reactions, on the logit of the share eaten:
 *
 *     utility = appetite_c + family_cg + common_f + own_cf + drift_cf(day) + warming_cf(tastings)
 *     on the day: + mood_c(day) + trick(kind)
 *
 * family, common and own are normal with standard deviations 0.8, 0.4 and 0.5, drawn from the seed
 * for each pair, save for the pairs in `KNOWN`, which are set. Drift is a slow wave of amplitude
 * |N(0, 0.35)| and a period of 300 days. Warming is −0.9 at the first tasting and is half gone
 * after five. Moods are normal (0.25); one day in 25 is a full day, with −2.6. A cutter or a pick
 * adds 0.35, any other trick 0.1. The share eaten is beta-distributed around logistic(utility)
 * with strength 3 and read on the quarter scale.
 */
export type Taste = {
  /** Utility of a food for a child without the day's mood and the tricks. */
  readonly utility: (childId: string, foodId: string, on: Day, tastings: number) => number;
};

const APPETITE: Readonly<Record<string, number>> = { biscuit: 1.3, pepper: 0.9 };

/** Set family utilities that make the two who they are. */
const KNOWN: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  biscuit: {
    ...{ "breaded-fish": 1.4, salmon: 1.2, egg: 0.9, cucumber: 1.1, mandarin: 1, mushroom: -2.4 },
    ...{ celery: -1.6, beet: -0.9, oats: 1.3, "hard-cheese": 0.8, olive: -0.4, kiwi: 0.7 },
    ...{ radish: -0.8, "sandwich-bread": 0.3, beans: 0.8, tuna: -0.6 },
  },
  pepper: {
    ...{ "breaded-fish": 0.1, salmon: -0.6, egg: -0.3, cucumber: 0.6, kiwi: -0.7, olive: -2.2 },
    ...{ "hard-cheese": 1.4, "mild-cheese": 1.3, pasta: 1.3, strawberry: 1.3, pea: 0.8, corn: 1.1 },
    ...{ tomato: -1.2, mushroom: -2, celery: -1.7, beet: -0.6, carrot: 0.9, radish: -1.8 },
    ...{ tuna: -1.2, "sweet-pepper": -0.5, oats: 1.1, muffin: 1.2, popcorn: 1 },
  },
};

/** What a trick adds to the utility. */
export function trickUtility(kind: string): number {
  return kind === "cutter" || kind === "pick" ? 0.35 : 0.1;
}

/** Draws the tastes of any child from the seed. */
export function tasteOf(foods: readonly Food[], seed: string, start: Day): Taste {
  const familyOf = new Map<string, string>(foods.map(({ id, family }) => [id, family]));
  const fixed = new Map<string, number>();
  const pair = (key: string, deviation: number): number => {
    let value = fixed.get(key);
    if (value === undefined) {
      value = deviation * normalFrom(`${seed} ${key}`);
      fixed.set(key, value);
    }
    return value;
  };
  return {
    utility: (childId, foodId, on, tastings) => {
      const family = familyOf.get(foodId) ?? foodId;
      const key = `${childId} ${foodId}`;
      const kin = KNOWN[childId]?.[family] ?? pair(`family ${childId} ${family}`, 0.8);
      const wave = Math.abs(pair(`drift ${key}`, 0.35));
      const phase = (hash32(`${seed} phase ${key}`) / 2 ** 32 + daysBetween(start, on) / 300) % 1;
      const warming = -0.9 * 2 ** (-tastings / 5);
      const appetite = APPETITE[childId] ?? 0.8 + pair(`appetite ${childId}`, 0.3);
      const own = pair(`common ${foodId}`, 0.4) + pair(`own ${key}`, 0.5);
      return appetite + kin + own + wave * Math.sin(2 * Math.PI * phase) + warming;
    },
  };
}

/** Share that a utility stands for. */
export function logistic(utility: number): number {
  return 1 / (1 + Math.exp(-utility));
}

/** A standard normal number that belongs to a text. */
function normalFrom(text: string): number {
  return drawNormal(randomFrom(text));
}
