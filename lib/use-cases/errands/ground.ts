import { addDays, mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import {
  readChildren,
  readEpisodes,
  readFoodsById,
  readGroupPlaces,
  readHomeMade,
  readLotRecords,
  readOnSale,
  readSettings,
  readShops,
  type ChildRecord,
  type Db,
  type EpisodeRecord,
  type LotRecord,
  type Settings,
  type ShopRecord,
} from "#lib/db/index.ts";
import { needsOf, type Need, type NeedProblem, type PlannedItem } from "#lib/shopping/index.ts";
import type { OfferGround } from "./offers.ts";
import { plannedItems } from "./planned-items.ts";

/** A shop for series that have named none yet; it becomes a record when something is ticked there. */
export const ANY_SHOP: ShopRecord = {
  id: "any-shop",
  name: "Any shop",
  days: [1, 2, 3, 4, 5, 6, 7],
  hours: "",
  distanceOrder: 0,
  aisles: [],
  note: "",
  isRetired: false,
};

/** A staple to be kept at a level. */
type ParRecord = {
  readonly foodId: string;
  readonly gramsPerDay: number;
  readonly leadDays: number;
  readonly reserveGrams: number;
};

/** An item of a lunch that is still to be made, as far as shopping goes. */
type ItemToBuyFor = PlannedItem & { readonly weekOf: Day; readonly shopId: string | null };

/** Everything the errands of some weeks rest on, read once. */
export type ErrandGround = OfferGround & {
  readonly today: Day;
  readonly settings: Settings;
  readonly children: readonly ChildRecord[];
  readonly episodes: readonly EpisodeRecord[];
  readonly items: readonly ItemToBuyFor[];
  readonly needs: readonly Need[];
  readonly problems: readonly NeedProblem[];
  readonly foods: ReadonlyMap<string, Food>;
  readonly lots: readonly LotRecord[];
  readonly homeMade: ReadonlySet<string>;
  readonly pars: readonly ParRecord[];
};

/** Reads the ground for the weeks from this one to the week of `monday`. */
export async function readErrandGround(db: Db, today: Day, monday: Day): Promise<ErrandGround> {
  const first = mondayOf(today);
  const [settings, children, episodes, lots, places, allShops, pars] = await Promise.all([
    readSettings(db),
    readChildren(db),
    readEpisodes(db, first, monday),
    readLotRecords(db),
    readGroupPlaces(db),
    readShops(db),
    db.par.findMany({ orderBy: { foodId: "asc" } }),
  ]);
  const items = itemsToBuyFor(episodes, children, today);
  const foodIds = [
    ...new Set([
      ...items.map((item) => item.food.id),
      ...lots.map((lot) => lot.foodId),
      ...pars.map((par) => par.foodId),
    ]),
  ];
  const [foods, onSale, homeMade] = await Promise.all([
    readFoodsById(db, foodIds),
    readOnSale(db, foodIds, addDays(today, 1)),
    readHomeMade(db, foodIds),
  ]);
  const shops = allShops.filter((shop) => !shop.isRetired);
  return {
    ...{ today, settings, children, episodes, items, foods, onSale, places, homeMade, pars },
    ...needsOf(items),
    shops: shops.length > 0 ? shops : [ANY_SHOP],
    lots: lots.filter((lot) => !lot.isRecalled),
  };
}

/** Planned items of lunches from `today` on whose lid is not shut. */
function itemsToBuyFor(
  episodes: readonly EpisodeRecord[],
  children: readonly ChildRecord[],
  today: Day,
): ItemToBuyFor[] {
  return episodes.flatMap(({ weekOf, lunches }) => {
    const open = lunches.filter((lunch) => !lunch.isPacked && lunch.date >= today);
    return plannedItems(open, children, ["planned", "stepped-in"]).map((item) => ({
      ...item,
      weekOf,
    }));
  });
}
