import { day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";

/** A food of a lunch in the week of shopping: which day, which food, how much for each child. */
export type Planned = {
  readonly on: string;
  readonly foodId: string;
  readonly amount: number;
  readonly unit: string;
};

/**
 * A small household: two children (one eats seven tenths), a market open daily and a grocer on Tuesday and
 * Saturday, products and prices for some foods, and one theme week with lunches as given.
 */
export async function errandSeries(
  { db }: Context,
  monday: string,
  planned: readonly Planned[],
): Promise<void> {
  await db.series.create({ data: { id: 1, name: "Harbour Boxes" } });
  await db.child.createMany({
    data: [
      { id: "biscuit", privateName: "Ines", onScreenName: "Biscuit", position: 0 },
      {
        ...{ id: "pepper", privateName: "Tomas", onScreenName: "Pepper" },
        position: 1,
        portionFactor: 0.7,
      },
    ],
  });
  await db.shop.createMany({
    data: [
      {
        id: "grocer",
        name: "Grocer",
        daysJson: "[2,6]",
        hours: "08:00–16:00",
        aislesJson: `["fruit","cold"]`,
      },
      { id: "market", name: "Market", daysJson: "[1,2,3,4,5,6]", distanceOrder: 1 },
    ],
  });
  for (const [foodId, grams, cents, shops] of GOODS) {
    const id = `${foodId}-pack`;
    await db.product.create({
      data: {
        id,
        foodId,
        name: `${foodId}, pack`,
        packAmount: grams,
        packUnit: "g",
        packGrams: grams,
      },
    });
    for (const shopId of shops) {
      await db.productShop.create({ data: { productId: id, shopId, aisle: "fruit" } });
      await db.price.create({ data: { productId: id, shopId, cents, on: "2026-01-02" } });
    }
  }
  const days = [...new Set(planned.map(({ on }) => on))].sort();
  await db.episode.create({
    data: {
      number: 1,
      weekOf: monday,
      workingTitle: "Tide Pool",
      lunches: {
        create: days.map((date) => ({
          id: `lunch-${date}`,
          date,
          items: {
            create: planned
              .filter(({ on }) => on === date)
              .map(({ foodId, amount, unit }, position) => ({
                ...{ id: `${date}-${foodId}`, foodId, amount, unit, position, part: "fruit" },
              })),
          },
        })),
      },
    },
  });
}

const GOODS: readonly (readonly [string, number, number, readonly string[]])[] = [
  ["grapes", 340, 320, ["grocer", "market"]],
  ["cucumber-slices", 300, 110, ["grocer"]],
  ["hummus", 200, 210, ["market"]],
  ["cheddar-cheese", 250, 380, ["market"]],
];

/** The Monday that the tests shop for, and the Saturday before it. */
export const MONDAY = day("2026-03-16");
export const SATURDAY = day("2026-03-14");

/** A tick of a line as a phone sends it; `turn` is its logical time. */
export function tickOf(
  line: { readonly id: string; readonly on: string; readonly at: string; readonly packs: number },
  state: "open" | "bought" | "none-left" | "dropped",
  turn = 1,
  own: {
    readonly packs?: number;
    readonly paidCents?: number | null;
    readonly device?: string;
  } = {},
) {
  const { device = "phone", ...rest } = own;
  return {
    ...{ lineId: line.id, shopId: line.at, day: day(line.on), state, packs: line.packs },
    paidCents: null,
    ...rest,
    stamp: `${String(turn).padStart(12, "0")}:${device}`,
  };
}
