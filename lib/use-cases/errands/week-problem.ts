import { fractionOf, groupBy, numberOf, sumOfFractions, times } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { ErrandLineRecord, ErrandRunRecord, ErrandWeekRecord } from "#lib/db/index.ts";
import {
  gramsToPar,
  runItemsOf,
  type FixedLine,
  type FoodOnSale,
  type Need,
  type OnHand,
  type Overrides,
  type RunItem,
  type RunProblem,
  type Trip,
} from "#lib/shopping/index.ts";
import type { ErrandGround } from "./ground.ts";
import { assumedProduct, foodOnSale } from "./offers.ts";
import { tripsTo } from "./shop-trips.ts";

/** Lunches are packed before shops open: what is bought one day is for the next. */
const LEAD_DAYS = 1;
/** Runs for a week are made from the Friday before it. */
const DAYS_BEFORE = 3;
const DAYS_BETWEEN_RUNS = 7;
/** How the id of a line begins that is bought besides what lunches ask for. */
export const BESIDES = "besides";

/** What a week's runs are to be planned from. */
export type WeekQuestion = {
  readonly problem: RunProblem;
  /** The needs of the week's lunches, and of staples to be kept at a level. */
  readonly needs: readonly Need[];
  readonly foods: ReadonlyMap<string, FoodOnSale>;
};

/** What a recorded week says: decisions, and lines ticked or fixed. */
export type WeekRecords = {
  readonly record: ErrandWeekRecord;
  readonly runs: readonly ErrandRunRecord[];
};

/** The question of a week's runs: what is needed, what is on hand, where it is sold, what was decided. */
export function weekQuestion(
  ground: ErrandGround,
  monday: Day,
  records: WeekRecords,
  onHand: readonly OnHand[],
): WeekQuestion {
  const { today } = ground;
  const inWeek = ground.items.filter((item) => item.weekOf === monday && item.day > today);
  const ids = new Set(inWeek.map((item) => item.id));
  const lunchNeeds = ground.needs.filter(
    (need) => ids.has(need.itemId) && !ground.homeMade.has(need.foodId),
  );
  const needs = [...lunchNeeds, ...parNeeds(ground, monday, lunchNeeds)];
  const shopsAsked = shopsAskedFor(ground, inWeek);
  const foods = new Map(
    [...new Set(needs.map((need) => need.foodId))].flatMap((foodId) => {
      const food = ground.foods.get(foodId);
      return food ? [[foodId, foodOnSale(food, ground, shopsAsked.get(foodId))] as const] : [];
    }),
  );
  const items = runItemsOf(needs, foods, onHand).map((item) => withDropped(item, records.runs));
  const last = needs.reduce<Day>((day, need) => (need.day > day ? need.day : day), monday);
  const from = addDays(monday, -DAYS_BEFORE);
  const trips = tripsTo(
    ground.shops,
    from < today ? today : from,
    addDays(last, -LEAD_DAYS),
  ).filter((trip) => !records.runs.some((run) => run.isDone && isSameTrip(run, trip)));
  const overrides = overridesOf(today, records, items, shopsAsked);
  return { problem: { trips, items, leadDays: LEAD_DAYS, overrides }, needs, foods };
}

/** What it takes to bring staples to their level by the end of the week, beside what lunches take. */
function parNeeds(ground: ErrandGround, monday: Day, lunchNeeds: readonly Need[]): Need[] {
  return ground.pars.flatMap((par) => {
    const food = ground.foods.get(par.foodId);
    if (!food || ground.homeMade.has(food.id)) return [];
    const own = lunchNeeds.filter((need) => need.foodId === food.id);
    const taken = numberOf(sumOfFractions(own.map((need) => need.asPurchased)));
    const rule = { ...par, daysBetweenRuns: DAYS_BETWEEN_RUNS };
    const asPurchased = gramsToPar(rule, taken);
    const day = addDays(monday, 4);
    if (asPurchased.top === 0n || day <= ground.today) return [];
    return [
      {
        itemId: `par:${food.id}`,
        day,
        foodId: food.id,
        foodName: food.name,
        productId: null,
        portions: [],
        unit: "g",
        edible: times(asPurchased, fractionOf(food.yieldFactor)),
        yieldFactor: food.yieldFactor,
        asPurchased,
      },
    ];
  });
}

/** A line that was dropped counts as food at home: nobody wants it bought elsewhere instead. */
function withDropped(item: RunItem, runs: readonly ErrandRunRecord[]): RunItem {
  const dropped = runs
    .flatMap((run) => run.lines)
    .filter((line) => line.state === "dropped" && isLineOf(item, line));
  const supplies = dropped.flatMap((line) => {
    const offer = item.offers.find((one) => one.productId === productOf(line));
    if (!offer) return [];
    return {
      id: `dropped:${line.id}`,
      grams: times(fractionOf(line.packs), offer.packGrams),
      from: null,
      until: item.lives.unopenedDays === null ? null : addDays(line.day, item.lives.unopenedDays),
      openedDays: item.lives.openedDays,
      isOpen: false,
    };
  });
  return supplies.length === 0 ? item : { ...item, supplies: [...item.supplies, ...supplies] };
}

/** Shops that a food is to be bought at: the one it is bought at only, else those its items name. */
function shopsAskedFor(
  { settings, shops }: ErrandGround,
  items: ErrandGround["items"],
): ReadonlyMap<string, readonly string[]> {
  const named = groupBy(
    items.filter(({ shopId }) => shopId !== null),
    ({ food }) => food.id as string,
  );
  const asked = new Map(
    [...named].map(([foodId, own]) => [foodId, own.flatMap(({ shopId }) => shopId ?? [])] as const),
  );
  // A shop that was given up no longer binds.
  for (const { foodId, shopId } of settings.onlyAt)
    if (shops.some(({ id }) => id === shopId)) asked.set(foodId, [shopId]);
  return asked;
}

function overridesOf(
  today: Day,
  { record, runs }: WeekRecords,
  items: readonly RunItem[],
  shopsAsked: ReadonlyMap<string, readonly string[]>,
): Overrides {
  const ahead = runs.filter((run) => run.day >= today && !run.isDone);
  const lines = runs.flatMap((run) => run.lines);
  const onlyAt = items.flatMap((item) => {
    const shops = shopsAsked.get(foodOf(item)) ?? [];
    return shops.map((shopId) => ({ itemId: item.id, shopId }));
  });
  return {
    goTo: ahead
      .filter((run) => run.byHand || run.lines.some((line) => isTicked(line)))
      .map(({ shopId, day }) => ({ shopId, day })),
    notTo: record.decisions.notTo,
    lines: ahead.flatMap((run) => run.lines.flatMap((line) => fixedLine(items, line) ?? [])),
    onlyAt,
    noneLeft: lines
      .filter((line) => line.state === "none-left")
      .map((line) => ({ productId: productOf(line), shopId: line.shopId, from: line.day })),
  };
}

/** A line whose packs or shop were fixed by hand, where a lunch or a level asks for its food. */
function fixedLine(items: readonly RunItem[], line: ErrandLineRecord): FixedLine | undefined {
  if (!line.byHand || line.state !== "open" || line.id.startsWith(BESIDES)) return undefined;
  const item = items.find((one) => isLineOf(one, line));
  const offers = item?.offers.filter((offer) => offer.productId === productOf(line)) ?? [];
  const offer = offers.find((one) => one.shopId === line.shopId) ?? offers[0];
  if (!item || !offer) return undefined;
  const { shopId, day, packs } = line;
  return { ...offer, shopId, day, packs, itemId: item.id, why: "by-hand" };
}

function isLineOf(item: RunItem, line: ErrandLineRecord): boolean {
  return (
    line.foodId !== null &&
    foodOf(item) === line.foodId &&
    item.offers.some((offer) => offer.productId === productOf(line))
  );
}

/** The product of a recorded line as plans name it. */
export function productOf({ foodId, productId }: ErrandLineRecord): string {
  return productId ?? assumedProduct(foodId ?? "");
}

/** The food of an item: an item of one product is named "food/product". */
export function foodOf({ id }: Pick<RunItem, "id">): string {
  return id.split("/")[0] ?? id;
}

function isTicked({ state }: ErrandLineRecord): boolean {
  return state === "bought" || state === "none-left";
}

function isSameTrip(one: Trip, other: Trip): boolean {
  return one.shopId === other.shopId && one.day === other.day;
}
