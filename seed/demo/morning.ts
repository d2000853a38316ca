import { addDays, dayNumber, type Day } from "#lib/calendar/index.ts";
import { chooseFood } from "./compose.ts";
import type { Favourite } from "./larder.ts";
import type { DemoLunchItem } from "./records.ts";
import type { Told } from "./pack.ts";
import type { Studio } from "./studio.ts";

const SCRAPPED: Readonly<Record<string, readonly string[]>> = {
  fruit: ["Bruised on the way home", "Not ripe yet", "Biscuit had it for breakfast"],
  vegetable: ["Went limp overnight", "The lid of the jar would not turn", "Frozen at the back"],
  dairy: ["Used up in last night’s supper", "Past its date when we looked"],
  dip: ["The blender was still in the sink", "Separated in the cold"],
  grain: ["Burnt while the camera battery was changed", "Stale by morning"],
  main: ["Still frozen in the middle", "Went to supper after all"],
  protein: ["Cracked in the pan", "The last ones were eaten at breakfast"],
  treat: ["Ran out of oats", "Somebody found the hiding place"],
};
const STEPPED_IN = ["What was there", "Quicker, at twenty past seven", "Biscuit’s idea"];

/** What became of a planned tray that morning: now and then something is scrapped, and replaced. */
export function tellMorning(
  studio: Studio,
  lunchId: string,
  on: Day,
  tray: readonly Favourite[],
  order: Parameters<typeof chooseFood>[3],
): Told[] {
  const { random, shelf, memory } = studio;
  const told: Told[] = [];
  for (const favourite of tray) {
    if (random.next() >= 0.035) {
      told.push({ favourite, fate: "packed" });
      continue;
    }
    const reasons = SCRAPPED[favourite.part] ?? ["Ran out of morning"];
    told.push({
      ...{ favourite, fate: "scrapped" as const, tricks: [] },
      more: {
        reason: random.pick(reasons),
        ...settled(favourite, on, studio.sources.today, random.next()),
      },
    });
    const insteadOfId = `${lunchId}-${told.length}`;
    const candidates = (shelf.get(favourite.part) ?? []).filter((other) => !tray.includes(other));
    const standIn = random.next() < 0.8 ? chooseFood(candidates, tray, memory, order) : undefined;
    if (!standIn) continue;
    memory.foods.set(standIn.food.id, dayNumber(on));
    const more = { insteadOfId, reason: random.pick(STEPPED_IN) };
    told.push({ favourite: standIn, fate: "stepped-in", more });
  }
  return told;
}

/** Scrapped food with a date is owed, until it is settled a few days later. */
function settled({ food }: Favourite, on: Day, today: Day, luck: number): Partial<DemoLunchItem> {
  const days = food.shelf.fridgeOpenedDays ?? food.shelf.cutDays ?? food.shelf.fridgeDays;
  if (days === null || days > 21) {
    // What keeps goes back into the cupboard and is used some other day.
    const settledOn = addDays(on, 1);
    return settledOn < today ? { settledOn, settledHow: "used" } : {};
  }
  const how = luck < 0.6 ? "used" : luck < 0.8 ? "frozen" : "let-go";
  const keep = Math.max(1, Math.min(days, how === "let-go" ? days : 3));
  const owedUseBy = addDays(on, days);
  const settledOn = addDays(on, keep);
  return settledOn < today ? { owedUseBy, settledOn, settledHow: how } : { owedUseBy };
}

const HARD = [
  "Stickers on every single plum.",
  "The star cutter slid off the table between takes.",
  "Two lids, one of them the wrong size.",
  "The rice would not hold its shape.",
  "Window light went at ten past.",
  "Pepper wanted to hold the camera.",
  "Peeling took longer than the whole rest.",
  "The flatbread cracked at the fold.",
  "The gull on the sill, again.",
];
const PICKUPS = [
  "Close-up of the lid shutting.",
  "The cut, from above, once more without the hand.",
  "Dip going into the pot.",
  "Biscuit’s face at the first bite; we only had the back.",
  "Sound of the crust.",
  "Two tins side by side on the wall.",
];
const WEATHER: Readonly<Record<string, readonly string[]>> = {
  cold: ["Frost on the inside of the kitchen window", "Sleet at the gate", "Cold hands, dry day"],
  mild: ["Grey and mild", "Wind from the harbour", "Sun between showers"],
  warm: ["Warm before seven", "Bags stood in the sun at the gate", "Sea fog, then heat"],
};

/** The quick facts of a shoot day, so far as anyone wrote them down. */
export function dayNotes(studio: Studio, month: number, trickMinutes: number) {
  const { random } = studio;
  const swing = Math.cos(((month - 7) / 12) * 2 * Math.PI);
  const ambientC = Math.round(2 * (12 + 8 * swing + 6 * (random.next() - 0.5))) / 2;
  const weather = ambientC < 8 ? "cold" : ambientC < 18 ? "mild" : "warm";
  const pick = (chance: number, from: readonly string[]): string =>
    random.next() < chance ? random.pick(from) : "";
  return {
    minutesUsed: Math.round(13 + trickMinutes + 7 * random.next()),
    ambientC,
    ambientNote: pick(0.4, WEATHER[weather] ?? [""]),
    hard: pick(0.18, HARD),
    pickups: pick(0.14, PICKUPS),
  };
}
