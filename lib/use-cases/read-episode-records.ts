import { addDays, day, type Day } from "#lib/calendar/index.ts";
import { gramsOf, type Trick } from "#lib/catalog/index.ts";
import {
  readChildren,
  readDraftGround,
  readEpisode,
  readSettings,
  readTricks,
  type DraftGoods,
  type EpisodeRecord,
  type ItemRecord,
  type LunchRecord,
  type Settings,
} from "#lib/db/index.ts";
import type { DraftItem, DraftLunch, EpisodeRecords, Voice } from "#lib/drafts/index.ts";
import type { Db } from "#lib/db/index.ts";

/** An episode with everything its drafts may rest on, or undefined when the week has none. */
export async function readEpisodeRecords(
  db: Db,
  monday: Day,
  today: Day,
): Promise<{ readonly episode: EpisodeRecord; readonly records: EpisodeRecords } | undefined> {
  const [episode, settings, children, tricks, series] = await Promise.all([
    readEpisode(db, monday),
    readSettings(db),
    readChildren(db),
    readTricks(db),
    db.series.findUnique({ where: { id: 1 } }),
  ]);
  if (!episode) return undefined;
  const items = episode.lunches.flatMap((lunch) => lunch.items);
  const ground = await readDraftGround(db, {
    ...{ episodeId: episode.id, monday, sunday: addDays(monday, 6) },
    lunchIds: episode.lunches.map(({ id }) => id),
    foodIds: [...new Set(items.map((item) => item.food.id))],
    productIds: [...new Set(items.flatMap((item) => item.productId ?? []))],
  });
  const judged = new Set(ground.reactions.map(({ childId }) => childId));
  const records: EpisodeRecords = {
    ...{ id: episode.id, number: episode.number, weekOf: episode.weekOf, today },
    title: episode.theme?.name ?? episode.workingTitle,
    surprise: episode.surprise,
    revealOn: episode.surpriseRevealOn === null ? null : day(episode.surpriseRevealOn),
    seriesName: series?.name ?? "",
    seriesStartedOn: series?.startedOn ? day(series.startedOn) : null,
    lunches: episode.lunches.map((lunch) => draftLunch(lunch, ground, tricks)),
    // A child that left the series still has its verdicts in the weeks it was part of.
    children: children.filter((child) => !child.isRetired || judged.has(child.id)),
    reactions: ground.reactions,
    promises: ground.promises,
    lastPacked: ground.lastPacked,
    lunchesBefore: ground.lunchesBefore,
    nextTitle: ground.nextTitle,
    voice: voiceOf(settings),
  };
  return { episode, records };
}

/** How the series speaks, from its settings. */
export function voiceOf(settings: Settings): Voice {
  return {
    ...{ signOn: settings.signOn, signOff: settings.signOff, tone: settings.tone },
    ...{ emoji: settings.emoji, housePhrases: settings.housePhrases },
    ...{ wordsPerMinute: settings.wordsPerMinute, privateWords: settings.privateWords },
  };
}

/** A lunch as drafts know it. */
export function draftLunch(
  lunch: LunchRecord,
  goods: DraftGoods,
  tricks: readonly Trick[],
): DraftLunch {
  const kinds = new Map<string, string>(tricks.map(({ id, kind }) => [id, kind]));
  return {
    ...{ id: lunch.id, date: lunch.date, angle: lunch.angle, isPacked: lunch.isPacked },
    minutesUsed: lunch.minutesUsed,
    items: lunch.items.map((item) => draftItem(item, goods, kinds)),
  };
}

function draftItem(
  item: ItemRecord,
  ground: DraftGoods,
  kinds: ReadonlyMap<string, string>,
): DraftItem {
  const { food, productId, shopId } = item;
  const shop = shopId === null ? undefined : ground.shops.get(shopId);
  return {
    ...{ id: item.id, foodId: food.id, food: food.name, countUnit: food.countUnit },
    count: countOf(item),
    ...{ fate: item.fate, reason: item.reason, insteadOfId: item.insteadOfId },
    tricks: item.tricks.map((trick) => ({ ...trick, kind: kinds.get(trick.id) ?? "garnish" })),
    shop: shop ?? (productId === null ? null : (ground.soldAt.get(productId) ?? null)),
    product: productId === null ? null : (ground.products.get(productId) ?? null),
    allergens: food.allergens,
    maybeAllergens: food.maybeAllergens,
    notFor: item.shares.filter(({ amount }) => amount === 0).map(({ childId }) => childId),
  };
}

/** How many of what a food is counted in one child gets, by weight; null when that cannot be told. */
function countOf({ food, amount, unit }: ItemRecord): number | null {
  const each = food.countUnit === null ? undefined : food.unitWeights[food.countUnit];
  const grams = gramsOf(food, { amount, unit });
  return each === undefined || !grams.ok ? null : grams.value / each;
}
