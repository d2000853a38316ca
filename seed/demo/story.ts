import { isPresent } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { Part } from "#lib/catalog/index.ts";
import { GIFTED, HONEY_ALMONDS } from "./goods.ts";
import type { Favourite } from "./larder.ts";
import type { Told } from "./pack.ts";
import type { Studio } from "./studio.ts";

/** Which day of the demo a tray is for; offset in weeks from this one, weekday 0 = Monday. */
export type StoryDay = {
  readonly lunchId: string;
  readonly offset: number;
  readonly weekday: number;
  readonly isShot: boolean;
  readonly today: Day;
  readonly month: number;
};

/**
 * The scenes that the demo always has: a flatbread envelope last Monday and star cuts both then and
 * this Wednesday; gifted crackers last Tuesday, beetroot scrapped last
 * Wednesday and still owed while a pear stepped in, and honey almonds planned for next Tuesday,
 * which the school's nut-free table does not allow.
 */
export function tellStory(studio: Studio, day: StoryDay, usual: readonly Told[]): Told[] {
  const scene = `${day.offset} ${day.weekday}`;
  if (scene === "-1 0") return withEnvelope(studio, day, usual);
  if (scene === "0 2") return diningCar(studio, day, usual);
  if (scene === "-1 1") return withGift(studio, day, usual);
  if (scene === "-1 2") return withOwedBeetroot(studio, day, usual);
  if (scene === "1 1") return withAlmonds(studio, usual);
  return [...usual];
}

function withEnvelope(studio: Studio, { isShot }: StoryDay, usual: readonly Told[]): Told[] {
  const flatbread = find(studio, "house-flatbread", "grain");
  const cheese = find(studio, "cheddar-cheese", "dairy");
  if (!flatbread || !cheese) return [...usual];
  const fate = isShot ? "packed" : "planned";
  const rest = clearOf(clearOf(usual, "grain"), "dairy");
  return [
    { favourite: flatbread, fate, tricks: ["envelope-fold"] },
    { favourite: cheese, fate, tricks: ["star-cutter"] },
    ...rest,
  ];
}

/** Fish cakes, rye stars, something crunchy, mandarin, bean dip and half an oat bar. */
function diningCar(studio: Studio, { isShot, month }: StoryDay, usual: readonly Told[]): Told[] {
  const cucumber = find(studio, "cucumber-slices", "vegetable");
  const isCucumberTime = cucumber?.food.seasonMonths?.includes(month) ?? true;
  const scene = [
    find(studio, "house-fish-cakes", "main"),
    find(studio, "rye-bread", "grain"),
    isCucumberTime ? cucumber : find(studio, "carrot-sticks", "vegetable"),
    find(studio, "mandarin-orange", "fruit"),
    find(studio, "house-bean-dip", "dip"),
    find(studio, "house-oat-bar", "treat"),
  ].filter(isPresent);
  if (scene.length < 6) return [...usual];
  return scene.map((favourite) => ({
    ...{ favourite, fate: isShot ? "packed" : "planned" },
    tricks: favourite.part === "grain" ? ["star-cutter"] : [],
  }));
}

function withGift(studio: Studio, { isShot }: StoryDay, usual: readonly Told[]): Told[] {
  const crackers = find(studio, "crispbread", "grain");
  if (!crackers) return [...usual];
  const gift: Told = {
    ...{ favourite: crackers, fate: isShot ? "packed" : "planned" },
    more: { productId: GIFTED, note: "From the gift tin: say so." },
  };
  return [gift, ...clearOf(usual, "grain")];
}

function withOwedBeetroot(
  studio: Studio,
  { lunchId, isShot, today }: StoryDay,
  usual: readonly Told[],
): Told[] {
  const beets = find(studio, "beets", "vegetable");
  const pear = find(studio, "pear", "fruit");
  if (!beets || !pear || !isShot) return [...usual];
  const scrapped: Told = {
    ...{ favourite: beets, fate: "scrapped", tricks: [] },
    more: {
      reason: "The lid of the jar would not turn",
      ...{ note: "Half a jar is left.", owedUseBy: addDays(today, 3) },
    },
  };
  const more = {
    insteadOfId: `${lunchId}-1`,
    reason: "Pear stepped in: quicker, at twenty past seven",
  };
  const rest = clearOf(usual, "vegetable").filter(({ favourite }) => favourite.part !== "fruit");
  return [scrapped, { favourite: pear, fate: "stepped-in", more }, ...rest];
}

function withAlmonds(studio: Studio, usual: readonly Told[]): Told[] {
  const food = studio.foods.find(({ id }) => id === "almonds");
  if (!food) return [...usual];
  const almonds: Favourite = { food, part: "treat", love: 1, debut: 0 };
  const note = "Swapped in late: it looked right in the tin.";
  const told: Told = {
    ...{ favourite: almonds, fate: "planned", tricks: [] },
    more: { productId: HONEY_ALMONDS, note },
  };
  return [...clearOf(usual, "treat"), told];
}

/** The usual items without a part; what stood in for something left is no longer instead of it. */
function clearOf(usual: readonly Told[], part: Part): Told[] {
  return usual
    .filter(({ favourite, fate }) => favourite.part !== part && fate !== "scrapped")
    .map(({ favourite, fate }) => ({
      favourite,
      fate: fate === "stepped-in" ? ("packed" as const) : fate,
    }));
}

function find({ foods }: Studio, id: string, part: Part): Favourite | undefined {
  const food = foods.find((one) => one.id === id);
  return food && { food, part, love: 1, debut: 0 };
}
