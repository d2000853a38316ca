import { drawBeta, drawNormal, randomFrom, type Random } from "#lib/base/index.ts";
import { addDays, day, weekdayOf, type Day } from "#lib/calendar/index.ts";
import type { Eaten, Verdict } from "#lib/reactions/index.ts";

/**
 * The stated taste model of the simulations, on the logit scale of the share eaten:
 *
 *     utility = appetite_c + family_cg + own_cf + common_f + drift_cf(week) + day_c(day)
 *
 * every term normal with the given standard deviation, drift a random walk per week that reverts
 * to nothing. The share eaten at one sitting is beta-distributed around logistic(utility) with
 * strength 2 and read on the quarter scale; the face is that share plus noise on the child's scale.
 */
export type TasteModel = {
  readonly appetite: number;
  readonly appetiteSpread: number;
  readonly family: number;
  readonly own: number;
  /** What a food is like for every child of the house; 0: children have nothing in common. */
  readonly common: number;
  readonly driftPerWeek: number;
  readonly day: number;
};

export const STABLE: TasteModel = {
  ...{ appetite: 0.6, appetiteSpread: 0.4, family: 0.9, own: 0.9 },
  ...{ common: 0, driftPerWeek: 0, day: 0 },
};
export const DRIFTING: TasteModel = { ...STABLE, driftPerWeek: 0.2 };
/** As a house is: some foods are nicer for all, tastes move, and some days a child is full. */
export const HOUSEHOLD: TasteModel = {
  ...{ appetite: 0.6, appetiteSpread: 0.4, family: 0.8, own: 0.7 },
  ...{ common: 0.6, driftPerWeek: 0.1, day: 0.6 },
};

export type Shape = {
  readonly seed: string;
  readonly weeks: number;
  readonly children: number;
  readonly foods: number;
  readonly families: number;
  readonly itemsPerDay: number;
};

export const USUAL_SHAPE: Omit<Shape, "seed" | "weeks"> = {
  children: 2,
  foods: 70,
  families: 18,
  itemsPerDay: 6,
};

export type Simulated = {
  readonly verdicts: readonly Verdict[];
  /** Expected share of a verdict's child and food that day, the day's mood left out. */
  readonly truth: ReadonlyMap<Verdict, number>;
};

/** First day of every simulated series. */
export const SIMULATED_FROM = day("2025-01-06");

/** A series drawn from a taste model; the same seed gives the same series. */
export function simulate(model: TasteModel, shape: Shape): Simulated {
  const random = randomFrom(shape.seed);
  const familyOf = Array.from({ length: shape.foods }, () => random.below(shape.families));
  const common = familyOf.map(() => model.common * drawNormal(random));
  const tastes = Array.from({ length: shape.children }, () => ({
    appetite: model.appetite + model.appetiteSpread * drawNormal(random),
    families: Array.from({ length: shape.families }, () => model.family * drawNormal(random)),
    own: familyOf.map(() => model.own * drawNormal(random)),
    drift: familyOf.map(() => 0),
  }));
  const weights = familyOf.map(() => Math.exp(0.8 * drawNormal(random)));
  const verdicts: Verdict[] = [];
  const truth = new Map<Verdict, number>();
  for (let offset = 0; offset < shape.weeks * 7; offset += 1) {
    const on = addDays(SIMULATED_FROM, offset);
    if (weekdayOf(on) === 1)
      for (const taste of tastes)
        taste.drift = taste.drift.map((d) => 0.98 * d + model.driftPerWeek * drawNormal(random));
    if (weekdayOf(on) > 5) continue;
    const box = drawBox(random, weights, shape.itemsPerDay);
    tastes.forEach((taste, child) => {
      const mood = model.day * drawNormal(random);
      for (const food of box) {
        const family = familyOf[food] ?? 0;
        const utility =
          taste.appetite +
          (taste.families[family] ?? 0) +
          (taste.own[food] ?? 0) +
          (common[food] ?? 0) +
          (taste.drift[food] ?? 0);
        const verdict = drawVerdict(random, { child, food, family, on }, utility + mood);
        verdicts.push(verdict);
        truth.set(verdict, logistic(utility));
      }
    });
  }
  return { verdicts, truth };
}

function drawBox(random: Random, weights: readonly number[], items: number): number[] {
  const keyed = weights.map((weight, food) => [random.next() ** (1 / weight), food] as const);
  return keyed
    .sort((a, b) => b[0] - a[0])
    .slice(0, items)
    .map(([, food]) => food);
}

function drawVerdict(
  random: Random,
  at: { child: number; food: number; family: number; on: Day },
  utility: number,
): Verdict {
  const mean = logistic(utility);
  const share = drawBeta(random, 2 * mean, 2 * (1 - mean));
  const eaten = Math.round(share * 4) as Eaten;
  const liked = Math.min(1, Math.max(0, mean + 0.5 * (share - mean) + 0.15 * drawNormal(random)));
  return {
    childId: `child-${at.child}`,
    foodId: `food-${at.food}`,
    familyId: `family-${at.family}`,
    day: at.on,
    eaten,
    face: random.next() < 0.7 ? Math.round(liked * 4) * 25 : null,
  };
}

function logistic(utility: number): number {
  return 1 / (1 + Math.exp(-utility));
}
