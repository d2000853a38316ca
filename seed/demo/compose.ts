import type { Random } from "#lib/base/index.ts";
import { dayNumber, partsOf, type Day } from "#lib/calendar/index.ts";
import type { Part } from "#lib/catalog/index.ts";
import { REST_DAYS, type Favourite } from "./larder.ts";

/** What was packed when, by food and by family, so that lunches vary. */
export type Memory = {
  readonly foods: Map<string, number>;
  readonly families: Map<string, number>;
};

/** An empty memory. */
export function freshMemory(): Memory {
  return { foods: new Map(), families: new Map() };
}

/** What one day's tray is composed for. */
export type Order = {
  readonly on: Day;
  /** Week of the history, which favourites debut by. */
  readonly week: number;
  readonly motifs: readonly string[];
  readonly random: Random;
  /** Seven foods nearly every day, for the long series. */
  readonly isPlenty?: boolean;
};

/** The favourites of one part. */
export type Shelf = ReadonlyMap<Part, readonly Favourite[]>;

/** Five to seven foods: something filling, a grain, a vegetable, a fruit, and what goes with them. */
export function composeTray(shelf: Shelf, memory: Memory, order: Order): Favourite[] {
  const { random, isPlenty = false } = order;
  const tray: Favourite[] = [];
  const add = (part: Part): void => {
    const choice = chooseFood(shelf.get(part) ?? [], tray, memory, order);
    if (choice) tray.push(choice);
  };
  add(random.next() < 0.62 ? "main" : "protein");
  // Pasta, pancakes and pizza bring their own grain.
  if (tray[0]?.food.group !== "grain" || isPlenty) add("grain");
  add("vegetable");
  add("fruit");
  add(random.next() < 0.5 ? "dip" : "dairy");
  if (random.next() < 0.78 || isPlenty) add("treat");
  if (random.next() < (isPlenty ? 0.95 : 0.38)) add(random.next() < 0.6 ? "vegetable" : "fruit");
  for (const part of ["treat", "fruit", "vegetable"] as const) if (tray.length < 5) add(part);
  for (const { food } of tray) {
    memory.foods.set(food.id, dayNumber(order.on));
    memory.families.set(food.family, dayNumber(order.on));
  }
  return tray;
}

/** One food for a tray: in season, rested, of a family not in the tray yet; theme motifs help. */
export function chooseFood(
  candidates: readonly Favourite[],
  tray: readonly Favourite[],
  memory: Memory,
  { on, week, motifs, random }: Order,
): Favourite | undefined {
  const month = partsOf(on)[1];
  const today = dayNumber(on);
  let best: Favourite | undefined;
  let bestKey = -1;
  for (const favourite of candidates) {
    const { food, part, love, debut } = favourite;
    if (debut > week || (food.seasonMonths !== null && !food.seasonMonths.includes(month)))
      continue;
    if (tray.some((other) => other.food.family === food.family)) continue;
    const away = today - (memory.foods.get(food.id) ?? today - 60);
    const kinAway = today - (memory.families.get(food.family) ?? today - 60);
    const rest = REST_DAYS[part] ?? 4;
    const patience = away < rest ? 0.02 : Math.min(1.5, away / (2 * rest));
    const kin = kinAway <= 1 ? 0.25 : 1;
    const fit = food.motifs.some((motif) => motifs.includes(motif)) ? 2.2 : 1;
    // Weighted draw without listing weights: the largest u^(1/w) (Efraimidis & Spirakis 2006).
    const key = random.next() ** (1 / (love * patience * kin * fit));
    if (key > bestKey) [best, bestKey] = [favourite, key];
  }
  return best;
}
