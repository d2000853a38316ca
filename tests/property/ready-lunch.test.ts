import fc from "fast-check";
import { expect, test } from "vitest";
import { PARTS } from "#lib/catalog/index.ts";
import { readyLunch, type ReadyFood, type ReadyPlace } from "#lib/planner/index.ts";

const parts = fc.uniqueArray(fc.constantFrom(...PARTS), { minLength: 1, maxLength: 3 });
const share = fc.integer({ min: 0, max: 20 }).map((twentieths) => twentieths / 20);
const foods: fc.Arbitrary<ReadyFood[]> = fc
  .array(fc.record({ parts, minutes: fc.integer({ min: 0, max: 8 }), liking: share, fit: share }), {
    maxLength: 6,
  })
  .map((all) => all.map((food, index) => ({ ...food, id: `food-${index}` })));
const places: fc.Arbitrary<ReadyPlace[]> = fc
  .array(parts, { minLength: 1, maxLength: 4 })
  .map((all) => all.map((one, index) => ({ name: `place-${index}`, parts: one })));

/** Every way to fill the places, by plain enumeration: an independent reading of the rules. */
function everyFilling(
  wanted: readonly ReadyPlace[],
  from: readonly ReadyFood[],
): (ReadyFood | undefined)[][] {
  const [place, ...rest] = wanted;
  if (!place) return [[]];
  const fits = from.filter((food) => food.parts.some((part) => place.parts.includes(part)));
  return [undefined, ...fits].flatMap((food) =>
    everyFilling(
      rest,
      from.filter((one) => one !== food),
    ).map((more) => [food, ...more]),
  );
}

const points = (filling: readonly (ReadyFood | undefined)[]): number =>
  filling.reduce((sum, food) => sum + (food ? 4 + food.liking + 0.5 * food.fit : 0), 0);
const minutes = (filling: readonly (ReadyFood | undefined)[]): number =>
  filling.reduce((sum, food) => sum + (food?.minutes ?? 0), 0);

test("the lunch that stands ready is the best of every way to fill it in time", () => {
  fc.assert(
    fc.property(places, foods, fc.integer({ min: 0, max: 12 }), (wanted, from, most) => {
      const found = readyLunch(wanted, from, most);
      const best = Math.max(
        ...everyFilling(wanted, from)
          .filter((filling) => minutes(filling) <= most)
          .map(points),
      );
      const chosen = (found?.filled ?? []).map((id) => from.find((food) => food.id === id));
      expect(points(chosen)).toBeCloseTo(best, 9);
      if (!found) return;
      const named = found.filled.filter((id) => id !== undefined);
      expect(new Set(named).size).toBe(named.length);
      expect(found.minutes).toBe(minutes(chosen));
      expect(found.minutes).toBeLessThanOrEqual(most);
      chosen.forEach((food, place) => {
        if (food) expect(wanted[place]?.parts.some((part) => food.parts.includes(part))).toBe(true);
      });
    }),
  );
});
