import { numberOf, sumOfFractions } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Need } from "./need.ts";
import type { RunLine, StockUse } from "./runs/problem.ts";

/** How a line came about, step by step, for the day it is first used. */
export type Arithmetic = {
  readonly name: string;
  readonly firstDay: Day;
  /** Equal portions counted: 3 of ¼ cup. */
  readonly portions: readonly {
    readonly count: number;
    readonly amount: number;
    readonly unit: string;
  }[];
  readonly edibleGrams: number;
  readonly asPurchasedGrams: number;
  /** Of the first day's need, what is not taken from this line: stock, and other lines. */
  readonly fromStockGrams: number;
  readonly fromOthersGrams: number;
  readonly packs: number;
  readonly packWord: string;
  readonly packGrams: number;
  /** Left after the first day, and the later days that use some of it. */
  readonly leftGrams: number;
  readonly laterDays: readonly Day[];
  /** Of what is left, the grams no planned day uses. */
  readonly overGrams: number;
};

/**
 * The arithmetic of a line from the needs of its food: portions → edible → as purchased → less stock →
 * packs → left. Undefined for a line that no planned day uses (added by hand).
 */
export function arithmeticOf(
  line: RunLine,
  needs: readonly Need[],
  fromStock: readonly StockUse[],
): Arithmetic | undefined {
  const days = [...line.uses].sort((one, other) => (one.day < other.day ? -1 : 1));
  const [first, ...later] = days;
  if (!first) return undefined;
  const own = needs.filter((need) => need.day === first.day);
  const asPurchasedGrams = numberOf(sumOfFractions(own.map((need) => need.asPurchased)));
  const fromStockGrams = fromStock
    .filter((use) => use.itemId === line.itemId && use.day === first.day)
    .reduce((sum, use) => sum + use.grams, 0);
  return {
    name: line.name,
    firstDay: first.day,
    portions: countedPortions(own),
    edibleGrams: numberOf(sumOfFractions(own.map((need) => need.edible))),
    asPurchasedGrams,
    fromStockGrams,
    fromOthersGrams: Math.max(0, asPurchasedGrams - fromStockGrams - first.grams),
    packs: line.packs,
    packWord: line.packWord,
    packGrams: line.packGrams,
    leftGrams: line.packs * line.packGrams - first.grams,
    laterDays: later.map((use) => use.day),
    overGrams: line.leftGrams,
  };
}

function countedPortions(needs: readonly Need[]): Arithmetic["portions"] {
  const counted = new Map<string, { count: number; amount: number; unit: string }>();
  for (const { portions, unit } of needs) {
    for (const { amount } of portions) {
      const key = `${amount} ${unit}`;
      const known = counted.get(key);
      if (known) known.count += 1;
      else counted.set(key, { count: 1, amount, unit });
    }
  }
  return [...counted.values()];
}
