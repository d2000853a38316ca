import type { Part } from "#lib/catalog/index.ts";

/** A food that is at home and may go into the tin that day. */
export type ReadyFood = {
  readonly id: string;
  readonly parts: readonly Part[];
  /** From opening the cupboard to the tin, waiting included. */
  readonly minutes: number;
  /** Expected eaten share, 0 to 1, the worst-off child's counting. */
  readonly liking: number;
  /** How well it fits the theme, 0 to 1. */
  readonly fit: number;
};

/** A place of the lunch, with the parts that can fill it. */
export type ReadyPlace = { readonly name: string; readonly parts: readonly Part[] };

export type ReadyLunch = {
  /** What fills each place, in the order of the places; undefined: nothing at home does. */
  readonly filled: readonly (string | undefined)[];
  readonly minutes: number;
};

/** A filled place is worth more than any liking or fit. */
const FILLED = 4;
const FIT = 0.5;

/**
 * The best lunch that stands ready: at most one food a place, each food once, within so many minutes;
 * as many places filled as can be, then by liking and fit. Exact, by branch and bound; ties go to the
 * foods named first. Undefined where no place can be filled.
 */
export function readyLunch(
  places: readonly ReadyPlace[],
  foods: readonly ReadyFood[],
  minutesMax: number,
): ReadyLunch | undefined {
  const worth = ({ liking, fit }: ReadyFood): number => FILLED + liking + FIT * fit;
  const able = places.map(({ parts }) =>
    foods
      .filter((food) => food.minutes <= minutesMax && food.parts.some((one) => parts.includes(one)))
      .sort((one, other) => worth(other) - worth(one)),
  );
  // The most that the places from each one on can still add.
  const most = able.map((_, from) =>
    able.slice(from).reduce((sum, [best]) => sum + (best ? worth(best) : 0), 0),
  );
  let best: { readonly value: number; readonly chosen: readonly (ReadyFood | undefined)[] } = {
    ...{ value: 0, chosen: [] },
  };
  const visit = (chosen: readonly (ReadyFood | undefined)[], value: number, left: number): void => {
    const place = chosen.length;
    if (place === places.length) {
      if (value > best.value) best = { value, chosen };
      return;
    }
    if (value + (most[place] ?? 0) <= best.value) return;
    for (const food of able[place] ?? []) {
      if (food.minutes <= left && !chosen.includes(food))
        visit([...chosen, food], value + worth(food), left - food.minutes);
    }
    visit([...chosen, undefined], value, left);
  };
  visit([], 0, minutesMax);
  if (best.value === 0) return undefined;
  return {
    filled: best.chosen.map((food) => food?.id),
    minutes: best.chosen.reduce((sum, food) => sum + (food?.minutes ?? 0), 0),
  };
}
