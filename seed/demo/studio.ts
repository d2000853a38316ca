import { randomFrom, type Random } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Food, Part } from "#lib/catalog/index.ts";
import { freshMemory, type Memory, type Shelf } from "./compose.ts";
import { favouritesOf, houseFoods, type Favourite } from "./larder.ts";
import { QuoteBook } from "./quotes.ts";
import type { Tastings } from "./react.ts";
import type {
  DemoChild,
  DemoItemShare,
  DemoItemTrick,
  DemoLunch,
  DemoLunchItem,
  DemoReaction,
} from "./records.ts";
import type { DemoSources } from "./sources.ts";
import { tasteOf, type Taste } from "./taste.ts";

/** Rows that grow while a series is told day by day. */
export type Rows = {
  readonly lunches: DemoLunch[];
  readonly lunchItems: DemoLunchItem[];
  readonly itemTricks: DemoItemTrick[];
  readonly itemShares: DemoItemShare[];
  readonly reactions: DemoReaction[];
};

/** Everything a series is told with. */
export type Studio = {
  readonly sources: DemoSources;
  readonly children: readonly DemoChild[];
  /** Reference foods and house recipes. */
  readonly foods: readonly Food[];
  readonly house: readonly Food[];
  readonly favourites: readonly Favourite[];
  readonly shelf: Shelf;
  readonly random: Random;
  readonly memory: Memory;
  readonly trickSeen: Map<string, number>;
  readonly trickKind: ReadonlyMap<string, string>;
  readonly taste: Taste;
  readonly tastings: Tastings;
  /** Null where nobody reads the quotes. */
  readonly book: QuoteBook | null;
  readonly rows: Rows;
};

/** Sets a studio up; the seed decides everything that is drawn. */
export function openStudio(
  sources: DemoSources,
  children: readonly DemoChild[],
  options: { readonly seed: string; readonly start: Day; readonly quotes: boolean },
): Studio {
  const house = houseFoods(sources.foods);
  const foods = [...sources.foods, ...house];
  const favourites = favouritesOf(foods);
  const shelf = new Map<Part, Favourite[]>();
  for (const favourite of favourites)
    shelf.set(favourite.part, [...(shelf.get(favourite.part) ?? []), favourite]);
  return {
    ...{ sources, children, foods, house, favourites, shelf },
    ...{ random: randomFrom(options.seed), memory: freshMemory(), trickSeen: new Map() },
    trickKind: new Map(sources.tricks.map(({ id, kind }) => [id, kind])),
    taste: tasteOf(foods, options.seed, options.start),
    tastings: new Map(),
    book: options.quotes ? new QuoteBook() : null,
    rows: { lunches: [], lunchItems: [], itemTricks: [], itemShares: [], reactions: [] },
  };
}
