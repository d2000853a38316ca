import { fractionOf, ok, refuse, sumOfFractions, times, dividedBy, ZERO } from "#lib/base/index.ts";
import type { Fraction, Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { gramsOf, type Food, type WeighableFood, type WeighProblem } from "#lib/catalog/index.ts";

/** What working out a need takes of a food. */
export type FoodToBuy = WeighableFood & Pick<Food, "id" | "yieldFactor" | "shelf">;

/** One child who gets an item. */
export type Eater = {
  readonly childId: string;
  /** Of the amount for a child of factor 1; zero for nothing. */
  readonly portionFactor: number;
  /** An amount of the child's own in the item's unit, which the factor does not touch; else null. */
  readonly share: number | null;
};

/** One item of one lunch, as planned. */
export type PlannedItem = {
  readonly id: string;
  readonly day: Day;
  readonly food: FoodToBuy;
  /** Set when the lunch asks for this product and no other. */
  readonly productId: string | null;
  /** For a child of portion factor 1. */
  readonly amount: number;
  readonly unit: string;
  readonly eaters: readonly Eater[];
};

/** What an item takes, each step of the arithmetic kept. */
export type Need = {
  readonly itemId: string;
  readonly day: Day;
  readonly foodId: string;
  readonly foodName: string;
  readonly productId: string | null;
  /** Amount per child in `unit`; children who get none are left out. */
  readonly portions: readonly { readonly childId: string; readonly amount: number }[];
  readonly unit: string;
  /** Grams as eaten. */
  readonly edible: Fraction;
  /** Edible grams out of one gram as purchased. */
  readonly yieldFactor: number;
  /** Grams as bought: edible divided by yield. */
  readonly asPurchased: Fraction;
};

/** Why a need cannot be worked out, and for which item to ask. */
export type NeedProblem =
  | { readonly kind: "cannot-weigh"; readonly itemId: string; readonly why: WeighProblem }
  | { readonly kind: "portion-not-a-number"; readonly itemId: string; readonly childId: string };

/**
 * What one item of a lunch takes: amount per child × portion factor, weighed edible, divided by the
 * food's yield. "As purchased = edible portion ÷ yield" is the rule of the USDA Food Buying Guide,
 * Appendix B. Exact, so that three thirds of a cup are one cup. Refuses, saying what to ask, when a
 * unit has no known weight or a portion is negative.
 */
export function needOf(item: PlannedItem): Result<Need, NeedProblem> {
  const one = gramsOf(item.food, { amount: 1, unit: item.unit });
  if (!one.ok) return refuse({ kind: "cannot-weigh", itemId: item.id, why: one.problem });
  if (!Number.isFinite(item.amount) || item.amount <= 0) {
    const why = { kind: "amount-not-positive" } as const;
    return refuse({ kind: "cannot-weigh", itemId: item.id, why });
  }
  const wrong = item.eaters.find((eater) => !isPortion(eater));
  if (wrong) {
    return refuse({ kind: "portion-not-a-number", itemId: item.id, childId: wrong.childId });
  }
  const amounts = item.eaters.map((eater) => portionOf(item.amount, eater));
  const edible = times(sumOfFractions(amounts), fractionOf(one.value));
  return ok({
    itemId: item.id,
    day: item.day,
    foodId: item.food.id,
    foodName: item.food.name,
    productId: item.productId,
    portions: item.eaters
      .map((eater) => ({ childId: eater.childId, amount: eatenAmount(item.amount, eater) }))
      .filter((portion) => portion.amount > 0),
    unit: item.unit,
    edible,
    yieldFactor: item.food.yieldFactor,
    asPurchased: dividedBy(edible, fractionOf(item.food.yieldFactor)),
  });
}

/**
 * The needs of many items, and the problems of those that have to be asked about. An item that
 * nobody eats takes nothing and is left out.
 */
export function needsOf(items: readonly PlannedItem[]): {
  readonly needs: readonly Need[];
  readonly problems: readonly NeedProblem[];
} {
  const results = items.map(needOf);
  return {
    needs: results.flatMap((result) =>
      result.ok && result.value.portions.length > 0 ? [result.value] : [],
    ),
    problems: results.flatMap((result) => (result.ok ? [] : [result.problem])),
  };
}

function portionOf(amount: number, eater: Eater): Fraction {
  if (eater.share !== null) return eater.share === 0 ? ZERO : fractionOf(eater.share);
  return times(fractionOf(amount), fractionOf(eater.portionFactor));
}

function eatenAmount(amount: number, { portionFactor, share }: Eater): number {
  return share ?? amount * portionFactor;
}

function isPortion({ portionFactor, share }: Eater): boolean {
  const amount = share ?? portionFactor;
  return Number.isFinite(amount) && amount >= 0;
}
