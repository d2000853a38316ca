import type { Random } from "#lib/base/index.ts";
import type { Food, Trick } from "#lib/catalog/index.ts";
import type { Favourite } from "./larder.ts";

/** Families that a cut is made on; cuts not named here go by `needsSliceable` alone. */
const CUTS: Readonly<Record<string, readonly string[]>> = {
  sticks: ["jicama", "summer-squash", "hard-cheese", "cabbage"],
  ribbons: ["carrot", "cucumber", "summer-squash"],
  "halved-coins": ["cucumber", "radish", "carrot"],
  "quarters-lengthwise": ["egg"],
  "thin-matchsticks": ["carrot", "apple", "sweet-pepper", "cabbage"],
  dice: ["melon", "mango", "hard-cheese", "mild-cheese", "tofu", "pineapple"],
  "pinwheel-roll": ["tortilla", "flatbread"],
  "roll-up": ["cold-cuts", "turkey", "tortilla"],
  "fan-of-slices": ["pear", "apple", "egg", "strawberry", "peach"],
  "zigzag-halves": ["egg", "kiwi", "orange"],
  spiral: ["cucumber", "cold-cuts"],
  "envelope-fold": ["tortilla", "flatbread"],
  "crinkled-accordion": ["cucumber", "sausage"],
};
/** Parts that a pick, container or garnish goes with. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  pick: ["fruit", "dairy", "main", "protein"],
  container: ["fruit", "treat", "vegetable"],
  garnish: ["main", "grain", "protein"],
};
/** Tricks of one kind of food only. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  "tiny-lidded-pot": ["dip", "treat"],
  "food-flask": [],
  "berry-dots": ["grain", "dairy"],
  "seaweed-cut-outs": ["grain"],
  "leaf-wrap": ["grain"],
  "chive-ties": ["main"],
  "skewer-with-blunt-ends": ["fruit", "dairy"],
};
/** Grapes and small tomatoes are always quartered, theme or not (CDC and AAP: round, firm, grape-sized). */
function isQuartered({ family, form }: Food): boolean {
  return form === "round-firm" && (family === "grape" || family === "tomato");
}

/** Whether a trick can be done on a food. */
function canWear({ food, part }: Favourite, trick: Trick): boolean {
  if (trick.needsSliceable && !food.sliceable) return false;
  if (trick.kind === "cutter") return food.sliceable && part !== "dip" && !isLeafThin(food);
  if (trick.kind === "cut") return CUTS[trick.id]?.includes(food.family) ?? trick.needsSliceable;
  // Seaweed sheets may hold traces of sesame.
  if (trick.id === "seaweed-cut-outs") return false;
  return (ONLY[trick.id] ?? PARTS[trick.kind])?.includes(part) ?? false;
}

function isLeafThin({ family }: Food): boolean {
  return family === "carrot" || family === "sweet-pepper" || family === "radish";
}

/** Tricks for a tray, by the place in it: the theme's own, one to three, never two cuts on one food. */
export function dressTray(
  tray: readonly Favourite[],
  tricks: readonly Trick[],
  motifs: readonly string[],
  random: Random,
  lastUsed: Map<string, number>,
  today: number,
): Map<number, string[]> {
  const worn = new Map<number, string[]>();
  const isCut = new Set<number>();
  tray.forEach(({ food }, place) => {
    if (!isQuartered(food) || !tricks.some(({ id }) => id === "quarters-lengthwise")) return;
    worn.set(place, ["quarters-lengthwise"]);
    isCut.add(place);
  });
  const fits = random
    .shuffle(tricks.filter((trick) => trick.motifs.some((motif) => motifs.includes(motif))))
    .sort((a, b) => ageOf(b, lastUsed, today) - ageOf(a, lastUsed, today));
  let wanted = 1 + random.below(3);
  for (const trick of fits) {
    if (wanted === 0) break;
    const changesForm = trick.kind === "cut" || trick.kind === "cutter";
    const places = tray.flatMap((favourite, place) =>
      canWear(favourite, trick) && !worn.has(place) && !(changesForm && isCut.has(place))
        ? [place]
        : [],
    );
    if (places.length === 0) continue;
    const place = random.pick(places);
    worn.set(place, [...(worn.get(place) ?? []), trick.id]);
    if (changesForm) isCut.add(place);
    lastUsed.set(trick.id, today);
    wanted -= 1;
  }
  return worn;
}

/** Days since a trick was seen, capped at three weeks so that old ones draw lots. */
function ageOf({ id }: Trick, lastUsed: Map<string, number>, today: number): number {
  return Math.min(21, today - (lastUsed.get(id) ?? today - 21));
}
