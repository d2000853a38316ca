import { fractionOf, randomFrom } from "#lib/base/index.ts";
import { addDays, day } from "#lib/calendar/index.ts";
import { NO_OVERRIDES, type Offer, type RunItem, type RunProblem } from "#lib/shopping/index.ts";

/** The shape of an invented week of shopping. */
export type RandomRuns = {
  readonly seed: number;
  readonly items: number;
  readonly shops: number;
  readonly days: number;
  /** Some foods keep only for days once opened. */
  readonly withOpenedLives: boolean;
};

const FIRST = day("2026-03-07");
const PACKS = [60, 100, 150, 200, 250, 340, 500, 750];

/** A week of needs from Monday to Friday, shopping from the Saturday before; the same for a seed. */
export function randomRuns(shape: RandomRuns): RunProblem {
  const random = randomFrom(`runs ${shape.seed}`);
  const shops = Array.from({ length: shape.shops }, (_, index) => `shop-${index}`);
  const trips = shops.flatMap((shopId) =>
    Array.from({ length: shape.days }, (_, offset) => ({
      shopId,
      day: addDays(FIRST, offset),
      cents: 300 + 100 * random.below(5),
    })),
  );
  const items = Array.from({ length: shape.items }, (_, index): RunItem => {
    const needs = Array.from({ length: 1 + random.below(3) }, () => ({
      day: addDays(FIRST, 2 + random.below(5)),
      grams: fractionOf(20 * (1 + random.below(15))),
    }));
    const sellers = random.shuffle(shops).slice(0, 1 + random.below(Math.min(3, shops.length)));
    const offers = sellers.flatMap((shopId): Offer[] =>
      Array.from({ length: 1 + random.below(2) }, (_, size) => {
        const grams = random.pick(PACKS);
        const priceCents = Math.round(grams * (0.4 + random.next()) + 40);
        const name = `food ${index}`;
        const productId = `product-${index}-${size}`;
        const packGrams = fractionOf(grams);
        return { productId, name, packWord: "pack", shopId, packGrams, priceCents };
      }),
    );
    const perishes = random.below(2) === 0;
    const opens = shape.withOpenedLives && random.below(2) === 0;
    return {
      id: `food-${index}`,
      name: `food ${index}`,
      needs,
      supplies: [],
      offers,
      lives: {
        unopenedDays: perishes ? 2 + random.below(4) : null,
        openedDays: opens ? 1 + random.below(2) : null,
      },
      wasteCentsPerGram: perishes ? 0.5 : 0,
    };
  });
  return { trips, items, leadDays: 1, overrides: NO_OVERRIDES };
}
