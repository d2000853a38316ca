import { numberOf } from "#lib/base/index.ts";
import { daysBetween, nearDay, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { keepUntilWritten, readFoodsById, readLotRecords, type Db } from "#lib/db/index.ts";
import {
  describeGrams,
  describeUseFirst,
  gramsToPar,
  parGrams,
  inOrderOfUse,
  type Place,
} from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { dailyUse } from "./daily-use.ts";

/** A lot as the stock page shows it. */
export type LotView = {
  readonly id: string;
  readonly foodId: string;
  readonly name: string;
  readonly productName: string | null;
  readonly grams: number;
  readonly place: Place;
  readonly boughtOn: Day | null;
  readonly openedOn: Day | null;
  readonly useBy: Day | null;
  readonly lastDay: Day | null;
  readonly daysLeft: number | null;
  /** "Fri 13", "5 Jan 2027" */
  readonly lastDayText: string;
  /** "hummus, 120 g, opened: by Thu 12 March, in 2 days" */
  readonly sentence: string;
  /** Where the last day comes from. */
  readonly source: "label" | "reference" | "none";
  readonly canFreeze: boolean;
  readonly isRecalled: boolean;
};

/** A staple kept at a level. */
export type ParView = {
  readonly foodId: string;
  readonly name: string;
  readonly gramsPerDay: number;
  readonly leadDays: number;
  readonly reserveGrams: number;
  readonly level: string;
  readonly onHand: string;
  /** What is missing to the level; empty when there is enough. */
  readonly missing: string;
};

export type StockView = {
  /** What to use first stands first. */
  readonly lots: readonly LotView[];
  readonly pars: readonly ParView[];
  /** Foods used often in the last weeks and without a level, with their use a day. */
  readonly suggestions: readonly {
    readonly foodId: string;
    readonly name: string;
    readonly gramsPerDay: number;
  }[];
};

const DAYS_BETWEEN_RUNS = 7;
const SUGGESTED_MOST = 5;

/** What is in the house, what to use first, and the staples kept at a level. */
export async function loadStock({ db, today }: Context): Promise<StockView> {
  return keepUntilWritten(db, `stock ${today}`, () => readStock(db, today));
}

async function readStock(db: Db, today: Day): Promise<StockView> {
  const [lots, pars, use] = await Promise.all([
    readLotRecords(db),
    db.par.findMany(),
    dailyUse(db, today),
  ]);
  const ids = [...lots.map((lot) => lot.foodId), ...pars.map((par) => par.foodId), ...use.keys()];
  const foods = await readFoodsById(db, [...new Set(ids)]);
  const byId = new Map(lots.map((lot) => [lot.id, lot]));
  return {
    lots: inOrderOfUse(lots, (foodId) => foods.get(foodId)?.shelf ?? NO_LIVES, today).flatMap(
      (first) => {
        const lot = byId.get(first.lot.id);
        if (!lot) return [];
        const { id, foodId, grams, place, boughtOn, openedOn, useBy, isRecalled } = lot;
        const { lastDay, daysLeft } = first;
        return [
          {
            ...{
              id,
              foodId,
              grams,
              place,
              boughtOn,
              openedOn,
              useBy,
              isRecalled,
              lastDay,
              daysLeft,
            },
            lastDayText: lastDay === null ? "" : nearDay(lastDay, today),
            name: lot.foodName,
            productName: lot.productName,
            sentence: describeUseFirst(first, lot.foodName),
            source: lastDay === null ? "none" : lastDay === useBy ? "label" : "reference",
            canFreeze:
              place !== "freezer" &&
              (daysLeft ?? 0) >= 0 &&
              (foods.get(foodId)?.shelf.freezerDays ?? null) !== null,
          },
        ];
      },
    ),
    pars: pars.map((par) => {
      const own = lots.filter((lot) => lot.foodId === par.foodId && !lot.isRecalled);
      const onHand = own.reduce((sum, lot) => sum + lot.grams, 0);
      const rule = { ...par, daysBetweenRuns: DAYS_BETWEEN_RUNS };
      const missing = numberOf(gramsToPar(rule, onHand));
      return {
        ...par,
        name: foods.get(par.foodId)?.name ?? par.foodId,
        level: describeGrams(numberOf(parGrams(rule))),
        onHand: describeGrams(onHand),
        missing: missing > 0 ? describeGrams(missing) : "",
      };
    }),
    suggestions: suggested(use, foods, new Set(pars.map((par) => par.foodId))),
  };
}

const NO_LIVES: Food["shelf"] = {
  pantryDays: null,
  pantryOpenedDays: null,
  fridgeDays: null,
  fridgeOpenedDays: null,
  cutDays: null,
  preparedDays: null,
  freezerDays: null,
};

function suggested(
  use: ReadonlyMap<string, number>,
  foods: ReadonlyMap<string, Food>,
  known: ReadonlySet<string>,
): StockView["suggestions"] {
  return [...use]
    .filter(([foodId]) => !known.has(foodId))
    .sort((one, other) => other[1] - one[1])
    .slice(0, SUGGESTED_MOST)
    .flatMap(([foodId, grams]) => {
      const food = foods.get(foodId);
      return food ? [{ foodId, name: food.name, gramsPerDay: Math.ceil(grams) }] : [];
    });
}

/** Days since something was opened, in words for its tag. */
export function openedFor({ openedOn }: LotView, today: Day): string {
  if (openedOn === null) return "";
  const days = daysBetween(openedOn, today);
  if (days <= 0) return "opened today";
  return days === 1 ? "opened yesterday" : `opened ${days} days ago`;
}
