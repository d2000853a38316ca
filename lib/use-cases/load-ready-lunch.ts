import { fractionOf } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Food, Part } from "#lib/catalog/index.ts";
import {
  keepUntilWritten,
  readChildren,
  readEpisode,
  readFoodsById,
  readLotRecords,
  type Db,
  type LunchRecord,
} from "#lib/db/index.ts";
import { stepsOfFood } from "#lib/kitchen/index.ts";
import { readyLunch, type ReadyPlace } from "#lib/planner/index.ts";
import { allocate, supplyOfLot } from "#lib/shopping/index.ts";
import type { Context } from "./context.ts";
import { acceptanceOf } from "./expected-liking.ts";
import { readForbidden } from "./forbidden-items.ts";
import { loadEstimates } from "./load-estimates.ts";

/** A lunch that stands ready for a morning that goes wrong. */
export type ReadyLunchView = {
  readonly minutes: number;
  readonly foods: readonly {
    readonly foodId: string;
    readonly name: string;
    readonly part: Part;
    /** It is planned anyway and stays. */
    readonly isPlanned: boolean;
  }[];
  /** Places that nothing at home fills. */
  readonly missing: readonly string[];
};

/** Longest that getting it ready may take. */
const MINUTES_MAX = 10;

/** What a lunch wants, and what can stand for it in need (common practice, no source). */
const PLACES: readonly ReadyPlace[] = [
  { name: "main", parts: ["main", "protein", "dairy"] },
  { name: "grain", parts: ["grain"] },
  { name: "vegetable", parts: ["vegetable"] },
  { name: "fruit", parts: ["fruit"] },
];

/**
 * One lunch from stock for a day, ready in ten minutes: what is at home in servings for all children and
 * within its life that day, nothing that an avoidance, a rule, a recall or the way it is carried keeps
 * out; by liking and by the motifs of the theme. Undefined once the lid is shut, or when nothing is there.
 */
export function loadReadyLunch(
  { db, today }: Context,
  date: Day,
): Promise<ReadyLunchView | undefined> {
  return keepUntilWritten(db, `ready lunch ${date} ${today}`, async () => {
    const episode = await readEpisode(db, mondayOf(date));
    const lunch = episode?.lunches.find((one) => one.date === date);
    if (!episode || !lunch || lunch.isPacked) return undefined;
    return readyFor(db, lunch, episode.theme?.motifs ?? [], today);
  });
}

async function readyFor(
  db: Db,
  lunch: LunchRecord,
  motifs: readonly string[],
  today: Day,
): Promise<ReadyLunchView | undefined> {
  const children = (await readChildren(db)).filter((child) => !child.isRetired);
  const atHome = await foodsAtHome(db, lunch.date, children);
  const items = atHome.map((food) => ({ id: food.id, foodId: food.id }));
  const [forbidden, learned] = await Promise.all([
    readForbidden(db, atHome, items, [lunch.date]),
    loadEstimates({ db, today }),
  ]);
  // What is in the cupboard is in season.
  const out = new Set(
    forbidden.filter(({ kind }) => kind !== "season").flatMap(({ itemIds }) => itemIds),
  );
  const allowed = atHome.filter(({ id }) => !out.has(id));
  const found = readyLunch(
    PLACES,
    allowed.map((food) => ({
      ...{ id: food.id, parts: food.parts },
      minutes: stepsOfFood(food).reduce((sum, step) => sum + step.minutes, 0),
      liking: likingOf(acceptanceOf(learned, food, children).map(({ mean }) => mean)),
      fit: Math.min(1, food.motifs.filter((motif) => motifs.includes(motif)).length / 2),
    })),
    MINUTES_MAX,
  );
  if (!found) return undefined;
  const planned = new Set<string>(
    lunch.items.filter(({ fate }) => fate !== "scrapped").map(({ food }) => food.id),
  );
  return {
    minutes: found.minutes,
    foods: found.filled.flatMap((id, place) => {
      const food = allowed.find((one) => one.id === id);
      const part = food?.parts.find((one) => PLACES[place]?.parts.includes(one));
      if (!food || !part) return [];
      return [{ foodId: food.id, name: food.name, part, isPlanned: planned.has(food.id) }];
    }),
    missing: found.filled.flatMap(
      (id, place) => (id === undefined ? PLACES[place]?.name : null) ?? [],
    ),
  };
}

/** The mean child's share, and somewhat the worst-off child's. */
function likingOf(shares: readonly number[]): number {
  if (shares.length === 0) return 0.5;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return 0.7 * mean + 0.3 * Math.min(...shares);
}

/** Foods of which a serving for every child is on hand and within its life on a day. */
async function foodsAtHome(
  db: Db,
  on: Day,
  children: readonly { readonly portionFactor: number }[],
): Promise<readonly Food[]> {
  const lots = (await readLotRecords(db)).filter((lot) => !lot.isRecalled);
  const foods = await readFoodsById(db, [...new Set(lots.map(({ foodId }) => foodId))]);
  const portions = Math.max(
    1,
    children.reduce((sum, child) => sum + child.portionFactor, 0),
  );
  return [...foods.values()].filter((food) => {
    const grams = fractionOf((food.servingGrams * portions) / food.yieldFactor);
    const supplies = lots
      .filter((lot) => lot.foodId === food.id)
      .map((lot) => supplyOfLot(lot, food.shelf));
    return allocate([{ day: on, grams }], supplies).net.length === 0;
  });
}
