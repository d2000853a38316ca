import type { BoxItem } from "../box.ts";
import type { Carrying } from "./carrying.ts";
import { predictCold, predictHot, type Prediction, type Surroundings } from "./predict.ts";

type Way = { readonly words: string; readonly carrying: Carrying };

/** What a way must reach: the minutes allowed, at one end of the model. */
type Aim = { readonly minutesMax: number; readonly end: "mid" | "unkind" };

/** Hottest that food goes into a jar: near boiling, as the test standard fills it (95 °C). */
const NEAR_BOILING_C = 95;

/**
 * What would bring cold food within the minutes allowed, tried in the model one way at a time and then all
 * together; words for a sentence, or null when none is enough.
 */
export function remedyForCold(
  items: readonly BoxItem[],
  portionFactor: number,
  carrying: Carrying,
  around: Surroundings,
  aim: Aim,
): string | null {
  const { packs } = carrying;
  const hasDrink = items.some(({ part, food }) => part === "drink" && food.holding !== "hot");
  const ways: Way[] = [
    ...(carrying.isPrechilled
      ? []
      : [
          {
            words: "chilling the packed box overnight",
            carrying: { ...carrying, isPrechilled: true },
          },
        ]),
    { words: "one more cold pack", carrying: { ...carrying, packs: packs + 1 } },
    ...(hasDrink && !carrying.freezesDrink
      ? [{ words: "freezing the drink", carrying: { ...carrying, freezesDrink: true } }]
      : []),
    { words: "two more cold packs", carrying: { ...carrying, packs: packs + 2 } },
    ...(carrying.bag === "hard" || carrying.bagReading !== null
      ? []
      : [
          { words: "a hard insulated box", carrying: { ...carrying, bag: "hard" as const } },
          {
            words: "a hard insulated box and one more cold pack",
            carrying: { ...carrying, bag: "hard" as const, packs: packs + 1 },
          },
        ]),
  ];
  const all: Carrying = {
    ...carrying,
    ...{ isPrechilled: true, packs: packs + 2, freezesDrink: hasDrink },
    bag: carrying.bagReading === null ? "hard" : carrying.bag,
  };
  return firstEnough(
    ways,
    {
      words: "a hard insulated box, two more cold packs and a night in the fridge together",
      carrying: all,
    },
    (way) => predictCold(items, portionFactor, way, around),
    aim,
  );
}

/** The same for hot food in a jar; a larger jar helps only when it is filled. */
export function remedyForHot(
  item: BoxItem,
  portionFactor: number,
  carrying: Carrying,
  around: Surroundings,
  aim: Aim,
): string | null {
  const hotter = { ...carrying, fillC: Math.max(carrying.fillC, NEAR_BOILING_C) };
  const fitMl = Math.max(100, Math.round(item.grams * portionFactor));
  const asIs = { item, portionFactor };
  const ways: (Way & typeof asIs)[] = [
    ...(carrying.isJarPreheated
      ? []
      : [
          {
            ...asIs,
            words: "preheating the jar with boiling water",
            carrying: { ...carrying, isJarPreheated: true },
          },
        ]),
    { ...asIs, words: "filling it near boiling, at 95 °C", carrying: hotter },
    {
      ...asIs,
      words: "a jar that the portion fills to the top, filled near boiling",
      carrying: { ...hotter, isJarPreheated: true, jarMl: fitMl, jarReading: null },
    },
    {
      ...{ item: { ...item, grams: 500 }, portionFactor: 1 },
      words: "a half-litre jar filled to the top near boiling",
      carrying: { ...hotter, isJarPreheated: true, jarMl: 500, jarReading: null },
    },
  ];
  const enough = ways.find((way) =>
    isEnough(predictHot(way.item, way.portionFactor, way.carrying, around), aim),
  );
  return enough?.words ?? null;
}

function firstEnough(
  ways: readonly Way[],
  all: Way,
  predict: (carrying: Carrying) => Prediction | undefined,
  aim: Aim,
): string | null {
  return [...ways, all].find(({ carrying }) => isEnough(predict(carrying), aim))?.words ?? null;
}

function isEnough(prediction: Prediction | undefined, { end, minutesMax }: Aim): boolean {
  return (prediction?.[end].minutesOut ?? 0) <= minutesMax;
}
