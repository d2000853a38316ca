import {
  addDays,
  daysBetween,
  mondayOf,
  partsOf,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import angles from "./data/angles.json" with { type: "json" };
import { AVOIDANCES, CARRYING, castOf, CLIMATE_C, schoolRulesFor, SHOPS, VOICE } from "./cast.ts";
import { composeTray } from "./compose.ts";
import { tellErrands, tellPars } from "./errands.ts";
import { tellEpisode, tellScreenTime } from "./episodes.ts";
import { addStoryGoods, GIFTED, onHand, stockShops } from "./goods.ts";
import { noteMinutes } from "./kitchen-notes.ts";
import { HOUSE_RECIPES } from "./larder.ts";
import { dayNotes, tellMorning } from "./morning.ts";
import { eat, packItems, type Told } from "./pack.ts";
import type {
  DemoEpisode,
  DemoLunchItem,
  DemoReaction,
  DemoScreenTime,
  DemoSeries,
} from "./records.ts";
import { daysOffBetween } from "./school-year.ts";
import type { DemoSources, DemoTheme } from "./sources.ts";
import { tellStory } from "./story.ts";
import { openStudio, type Studio } from "./studio.ts";
import { logistic } from "./taste.ts";
import { themesFor } from "./theme-weeks.ts";
import { tellIdeas, tellPromises } from "./viewers.ts";

const WEEKS_BEHIND = 52;
const WEEKS_AHEAD = 4;
const SEED = "tin harbour";
const ANGLES: Readonly<Record<string, readonly string[]>> = angles;

/**
 * The invented series "Tin Harbour": a year behind `today` and four weeks ahead, the same for the
 * same day and catalogue. This week and the next are locked, the rest pencilled; in the last week
 * only the first three days are filled. Everything and everyone in it is made up.
 */
export function tinHarbour(sources: DemoSources): DemoSeries {
  const { today, themes } = sources;
  const thisMonday = mondayOf(today);
  const start = weeksLater(thisMonday, -WEEKS_BEHIND);
  const studio = openStudio(sources, castOf(today), { seed: SEED, start, quotes: true });
  const keep = { from: weeksLater(thisMonday, -1), to: addDays(weeksLater(thisMonday, 4), -1) };
  const daysOff = daysOffBetween(start, keep.to, keep);
  const isOff = (on: Day): boolean => daysOff.some(({ from, to }) => from <= on && on <= to);
  const mondays = Array.from({ length: WEEKS_BEHIND + WEEKS_AHEAD }, (_, week) =>
    weeksLater(start, week),
  ).filter((monday) => [0, 1, 2, 3, 4].some((offset) => !isOff(addDays(monday, offset))));
  const themeOf = themesFor(mondays, thisMonday, themes, SEED);
  const episodes: DemoEpisode[] = [];
  const screenTimes: DemoScreenTime[] = [];
  for (const monday of mondays) {
    const theme = themeOf.get(monday);
    if (!theme) continue;
    const offset = daysBetween(thisMonday, monday) / 7;
    const number = episodes.length + 1;
    const episode = tellEpisode(number, monday, theme, offset, today, studio.random);
    episodes.push(episode);
    screenTimes.push(...tellScreenTime(episode, ["biscuit", "pepper"], studio.random));
    tellWeek(studio, episode, theme, offset, today, isOff);
  }
  return finish(studio, { start, daysOff, episodes, screenTimes });
}

function tellWeek(
  studio: Studio,
  episode: DemoEpisode,
  theme: DemoTheme,
  offset: number,
  today: Day,
  isOff: (on: Day) => boolean,
): void {
  const dayCount = offset === WEEKS_AHEAD - 1 ? 3 : 5;
  for (let weekday = 0; weekday < dayCount; weekday += 1) {
    const on = addDays(episode.weekOf, weekday);
    if (isOff(on)) continue;
    const lunchId = `lunch-${on}`;
    const week = WEEKS_BEHIND + offset;
    const order = { on, week, motifs: theme.motifs, random: studio.random };
    const tray = composeTray(studio.shelf, studio.memory, order);
    const isShot = on < today;
    const usual: Told[] = isShot
      ? tellMorning(studio, lunchId, on, tray, order)
      : tray.map((favourite) => ({ favourite, fate: "planned" }));
    const told = tellStory(
      studio,
      { lunchId, offset, weekday, isShot, today, month: partsOf(on)[1] },
      usual,
    );
    const packed = packItems(studio, lunchId, on, told, theme.motifs);
    const minutes = packed.flatMap(({ tricks }) => tricks).length * 2.5;
    const notes = dayNotes(studio, partsOf(on)[1], minutes);
    studio.rows.lunches.push({
      ...{ id: lunchId, episodeId: episode.id, date: on, angle: ANGLES[theme.id]?.[weekday] ?? "" },
      ...(isShot
        ? { ...notes, packedAt: `${on}T06:3${studio.random.below(10)}:00.000Z` }
        : {
            minutesUsed: null,
            ambientC: null,
            ambientNote: "",
            hard: "",
            pickups: "",
            packedAt: null,
          }),
    });
    if (isShot) eat(studio, on, packed);
  }
}

function finish(
  studio: Studio,
  told: Pick<DemoSeries, "daysOff" | "episodes" | "screenTimes"> & { readonly start: Day },
): DemoSeries {
  const { today } = studio.sources;
  const goods = stockShops(studio.favourites, told.start);
  addStoryGoods(goods, studio.foods, told.start);
  const { rows, taste, tastings } = studio;
  const stock = onHand(studio.foods, goods, today);
  const lunchItems = withProducts(rows.lunchItems, new Set(goods.products.map(({ id }) => id)));
  const { bought, ...errands } = tellErrands({
    ...{ today, stock, lunchItems, foods: studio.foods, children: studio.children, ...goods },
    ...{ lunches: rows.lunches, itemShares: rows.itemShares },
  });
  return {
    ...{ name: "Tin Harbour", startedOn: told.start, children: studio.children },
    ...{
      avoidances: AVOIDANCES,
      schoolRules: schoolRulesFor(today),
      ...{ carrying: CARRYING, climateC: CLIMATE_C, voice: VOICE },
      shops: SHOPS,
      ...{ houseFoods: studio.house, houseRecipes: HOUSE_RECIPES },
    },
    ...{ daysOff: told.daysOff, episodes: told.episodes, screenTimes: told.screenTimes },
    ...goods,
    ...{ stock: [...stock, ...bought], pars: tellPars(studio.foods), ...errands },
    ...{ lunches: rows.lunches, itemTricks: rows.itemTricks, itemShares: rows.itemShares },
    lunchItems,
    reactions: amend(rows.reactions, studio),
    timings: noteMinutes(
      rows.lunches,
      rows.lunchItems,
      new Map<string, Food>(studio.foods.map((food) => [food.id, food])),
      today,
    ),
    promises: tellPromises(today, told.episodes),
    ideas: tellIdeas(today),
    truthFor: (childId, foodId, on = today) =>
      logistic(taste.utility(childId, foodId, on, tastings.get(`${childId} ${foodId}`) ?? 0)),
  };
}

/** Points each item at what was bought for it. */
function withProducts(
  items: readonly DemoLunchItem[],
  known: ReadonlySet<string>,
): DemoLunchItem[] {
  return items.map((item) => {
    const usual = `bought-${item.foodId}`;
    const productId = item.productId ?? (known.has(usual) ? usual : null);
    return { ...item, productId: productId === GIFTED && !known.has(GIFTED) ? null : productId };
  });
}

/** A few late leftovers: what came back half eaten and was finished after school. */
function amend(reactions: readonly DemoReaction[], { random }: Studio): DemoReaction[] {
  return reactions.map((reaction) => {
    const { eaten } = reaction;
    if (eaten === null || eaten === 0 || eaten === 4 || random.next() >= 0.02) return reaction;
    const after = (eaten + 1) as 2 | 3 | 4;
    return {
      ...reaction,
      eaten: after,
      note: "Ate some more of it on the walk home.",
      revision: 2,
    };
  });
}
