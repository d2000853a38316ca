import { dayNumber, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import { dressTray } from "./dress.ts";
import { hasSesame, type Favourite } from "./larder.ts";
import { drawMood, react, type DayMood } from "./react.ts";
import type { DemoChild, DemoLunchItem } from "./records.ts";
import type { Studio } from "./studio.ts";
import { trickUtility } from "./taste.ts";

/** An item as told of a day; what is not said is the usual. */
export type Told = {
  readonly favourite: Favourite;
  readonly fate: DemoLunchItem["fate"];
  readonly more?: Partial<DemoLunchItem>;
  readonly tricks?: readonly string[];
};

/** Writes the items of a lunch, with tricks and each child's share; returns them with their foods. */
export function packItems(
  studio: Studio,
  lunchId: string,
  on: Day,
  told: readonly Told[],
  motifs: readonly string[],
): { readonly item: DemoLunchItem; readonly told: Told; readonly tricks: readonly string[] }[] {
  const { rows, sources, random } = studio;
  const worn = dressTray(
    told.map(({ favourite }) => favourite),
    sources.tricks,
    motifs,
    random,
    studio.trickSeen,
    dayNumber(on),
  );
  return told.map((one, position) => {
    const { food, part } = one.favourite;
    const { amount, unit } = amountOf(food);
    const item: DemoLunchItem = {
      ...{ id: `${lunchId}-${position + 1}`, lunchId, foodId: food.id, productId: null, part },
      ...{ position, amount, unit, fate: one.fate, reason: "", insteadOfId: null, note: "" },
      ...{ owedUseBy: null, settledOn: null, settledHow: null },
      ...one.more,
    };
    const tricks = one.tricks ?? worn.get(position) ?? [];
    rows.lunchItems.push(item);
    for (const trickId of tricks) rows.itemTricks.push({ itemId: item.id, trickId });
    for (const child of studio.children) {
      const own = shareOf(food, amount, unit, child);
      if (own !== null) rows.itemShares.push({ itemId: item.id, childId: child.id, amount: own });
    }
    return { item, told: one, tricks };
  });
}

/** Lets the children eat what was packed. */
export function eat(
  studio: Studio,
  on: Day,
  packed: ReturnType<typeof packItems>,
  moods: readonly DayMood[] = studio.children.map(() => drawMood(studio.random)),
): void {
  studio.children.forEach((child, index) => {
    const mood = moods[index] ?? { shift: 0, isFull: false };
    for (const { item, told, tricks } of packed) {
      const { food, part } = told.favourite;
      if (item.fate === "scrapped" || isKeptFrom(food, child)) continue;
      const lift = tricks.reduce(
        (sum, id) => sum + trickUtility(studio.trickKind.get(id) ?? ""),
        0,
      );
      const met = { itemId: item.id, food, part, on, tricks: lift };
      const { taste, tastings, random, book } = studio;
      studio.rows.reactions.push(react(met, child, mood, taste, tastings, random, book));
    }
  });
}

/** Whether a food is left out of a child's tin: sesame, for Pepper. */
function isKeptFrom(food: Food, child: DemoChild): boolean {
  return child.id === "pepper" && hasSesame(food);
}

/** A serving as it is counted out, or in grams to the nearest five. */
function amountOf(food: Food): { readonly amount: number; readonly unit: string } {
  const weight = food.countUnit === null ? undefined : food.unitWeights[food.countUnit];
  const count =
    weight === undefined ? Infinity : Math.max(1, Math.round(food.servingGrams / weight));
  // Nobody counts out fifteen celery sticks.
  if (food.countUnit !== null && count <= 8) return { amount: count, unit: food.countUnit };
  return { amount: Math.max(5, Math.round(food.servingGrams / 5) * 5), unit: "g" };
}

/** A child's own amount where the portion factor does not give it: whole pieces, or none at all. */
function shareOf(food: Food, amount: number, unit: string, child: DemoChild): number | null {
  if (isKeptFrom(food, child)) return 0;
  if (unit === "g" || child.portionFactor === 1) return null;
  return Math.max(1, Math.round(amount * child.portionFactor));
}
