import { groupBy } from "#lib/base/index.ts";
import { addDays, mondayOf, weeksLater, type Day } from "#lib/calendar/index.ts";
import { gramsOf, type Food } from "#lib/catalog/index.ts";
import { livesOf, usualPlace } from "#lib/shopping/index.ts";
import type { Goods } from "./goods.ts";
import type {
  DemoChild,
  DemoErrandLine,
  DemoErrandRun,
  DemoItemShare,
  DemoLunch,
  DemoLunchItem,
  DemoPar,
  DemoProduct,
  DemoStock,
} from "./records.ts";

/** What was bought for this week so far, and what is left of it. */
export type ToldErrands = {
  readonly errandRuns: readonly DemoErrandRun[];
  readonly errandLines: readonly DemoErrandLine[];
  readonly bought: readonly DemoStock[];
};

/** What this week's runs are told from. */
export type ErrandSources = Goods & {
  readonly today: Day;
  readonly foods: readonly Food[];
  readonly children: readonly DemoChild[];
  readonly lunches: readonly DemoLunch[];
  readonly lunchItems: readonly DemoLunchItem[];
  readonly itemShares: readonly DemoItemShare[];
  /** In the house already: not bought again. */
  readonly stock: readonly DemoStock[];
};

type Wanted = { readonly day: Day; readonly grams: number };

/**
 * The Saturday before this week: each shop was walked and its list ticked, but for every third thing
 * that is needed only from tomorrow on, which waits for a later run. What was packed since is used up.
 */
export function tellErrands(sources: ErrandSources): ToldErrands {
  const { today } = sources;
  const monday = mondayOf(today);
  const saturday = addDays(monday, -2);
  const onHand = new Set(sources.stock.map(({ foodId }) => foodId));
  const runs = new Map<string, DemoErrandRun>();
  const errandLines: DemoErrandLine[] = [];
  const bought: DemoStock[] = [];
  [...wantedByProduct(sources, monday)].forEach(([productId, all], index) => {
    const product = sources.products.find(({ id }) => id === productId);
    const shop = sources.productShops.find((one) => one.productId === productId);
    const food = sources.foods.find(({ id }) => id === product?.foodId);
    const wanted = food ? all.filter(({ day }) => keepsTill(food, saturday, day)) : [];
    const isForLater = index % 3 === 0 && wanted.every(({ day }) => day > today);
    if (!product || !shop || !food || onHand.has(food.id)) return;
    if (wanted.length === 0 || isForLater) return;
    const { shopId } = shop;
    const id = [saturday, shopId, `${food.id}/${productId}`, productId].join("|");
    const run = {
      ...{ id: `run-${saturday}-${shopId}`, shopId, date: saturday, weekOf: monday },
      ...{ doneAt: `${saturday}T11:00:00.000Z`, byHand: false },
    };
    runs.set(shopId, run);
    const packs = Math.ceil(sum(wanted) / product.packGrams);
    const cents = priceOf(sources, product, shopId, saturday) * packs;
    const line = { runId: run.id, foodId: food.id, productId, label: "", packs, paidCents: cents };
    const ticked = { state: "bought" as const, byHand: false, stamp: `${"0".repeat(11)}1:demo` };
    errandLines.push({ id, ...line, ...ticked });
    const used = sum(wanted.filter(({ day }) => day < today));
    const grams = Math.round(packs * product.packGrams - used);
    if (grams < 5) return;
    bought.push({
      ...{ id: `bought ${id}`, foodId: food.id, productId, grams, boughtOn: saturday },
      ...{ openedOn: used > 0 ? (wanted[0]?.day ?? null) : null, useBy: null },
      ...{ place: usualPlace(food.shelf), paidCents: cents },
    });
  });
  return { errandRuns: [...runs.values()], errandLines, bought };
}

/** Whether a closed pack bought on one day keeps till another. */
function keepsTill({ shelf }: Food, bought: Day, day: Day): boolean {
  const { unopenedDays } = livesOf(shelf, usualPlace(shelf));
  return unopenedDays === null || day <= addDays(bought, unopenedDays);
}

/** Grams as bought that this week's lunches take of each product, by day. */
function wantedByProduct(sources: ErrandSources, monday: Day): Map<string, Wanted[]> {
  const dayOf = new Map(
    sources.lunches
      .filter(({ date }) => date >= monday && date < weeksLater(monday, 1))
      .map(({ id, date }) => [id, date]),
  );
  const items = sources.lunchItems.flatMap((item) => {
    const day = dayOf.get(item.lunchId);
    const grams = day ? gramsFor(item, sources) : 0;
    const { productId } = item;
    if (!day || grams === 0 || productId === null || item.fate === "scrapped") return [];
    return [{ productId, day, grams }];
  });
  return groupBy(items, ({ productId }) => productId);
}

function gramsFor(item: DemoLunchItem, { foods, children, itemShares }: ErrandSources): number {
  const food = foods.find(({ id }) => id === item.foodId);
  const one = food && gramsOf(food, { amount: 1, unit: item.unit });
  if (!one?.ok) return 0;
  const amounts = children.map((child) => {
    const own = itemShares.find(
      ({ itemId, childId }) => itemId === item.id && childId === child.id,
    );
    return own?.amount ?? item.amount * child.portionFactor;
  });
  if (!food) return 0;
  const edible = one.value * amounts.reduce((total, amount) => total + amount, 0);
  return edible / food.yieldFactor;
}

function priceOf({ prices }: Goods, { id }: DemoProduct, shopId: string, on: Day): number {
  const known = prices.filter((one) => one.productId === id && one.shopId === shopId);
  return known.filter((price) => price.on <= on).at(-1)?.cents ?? known[0]?.cents ?? 0;
}

function sum(wanted: readonly Wanted[]): number {
  return wanted.reduce((total, { grams }) => total + grams, 0);
}

/** "foodId grams-a-day lead-days reserve": staples of the house. */
const STAPLES = ["cheddar-cheese 15 1 60", "crispbread 20 2 50"];

/** The staples that the house never wants to run out of. */
export function tellPars(foods: readonly Food[]): DemoPar[] {
  const known = new Set<string>(foods.map(({ id }) => id));
  return STAPLES.flatMap((line) => {
    const [foodId = "", gramsPerDay, leadDays, reserveGrams] = line.split(" ");
    if (!known.has(foodId)) return [];
    const level = { gramsPerDay: Number(gramsPerDay), leadDays: Number(leadDays) };
    return [{ foodId, ...level, reserveGrams: Number(reserveGrams) }];
  });
}
