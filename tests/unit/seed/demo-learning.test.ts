import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { estimateAll, type Verdict } from "#lib/reactions/index.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { demoSources } from "#tests/support/demo-sources.ts";

const TODAY = day("2026-03-11");
const sources = demoSources(TODAY);
const series = tinHarbour(sources);
const familyOf = new Map<string, string>(
  [...sources.foods, ...series.houseFoods].map(({ id, family }) => [id, family]),
);
const dateOf = new Map(series.lunches.map(({ id, date }) => [id, date]));
const itemOf = new Map(series.lunchItems.map((item) => [item.id, item]));

const verdicts = series.reactions.flatMap(({ itemId, childId, eaten, face }): Verdict[] => {
  const item = itemOf.get(itemId);
  const on = dateOf.get(item?.lunchId ?? "");
  if (!item || !on) return [];
  const { foodId } = item;
  return [{ childId, foodId, familyId: familyOf.get(foodId) ?? foodId, day: on, eaten, face }];
});
const learned = estimateAll(verdicts, { today: TODAY });

describe("what is learned of Tin Harbour, against the tastes behind it", () => {
  test.each(["biscuit", "pepper"])("%s's estimates follow the truth", (child) => {
    const known = learned.met.filter(
      ({ childId, history }) => childId === child && (history?.offers ?? 0) >= 5,
    );
    expect(known.length).toBeGreaterThan(25);
    const guess = known.map(({ estimate }) => estimate);
    const truth = known.map(({ foodId }) => series.truthFor(child, foodId, TODAY));
    expect(correlation(guess, truth)).toBeGreaterThan(0.75);
    const error = guess.map((value, index) => Math.abs(value - (truth[index] ?? 0)));
    expect(error.reduce((sum, one) => sum + one, 0) / error.length).toBeLessThan(0.13);
  });
  test("eight intervals in ten, give or take, hold the truth", () => {
    const held = learned.met.filter(({ childId, foodId, low, high }) => {
      const truth = series.truthFor(childId, foodId, TODAY);
      return low <= truth && truth <= high;
    });
    expect(held.length / learned.met.length).toBeGreaterThan(0.65);
  });
  test("every standing has someone in it", () => {
    const kinds = new Set(learned.met.map(({ standing }) => standing.kind));
    expect([...kinds].sort()).toEqual(["dependable", "meeting", "mixed", "resting"]);
  });
});

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = (of: readonly number[]): number => of.reduce((sum, x) => sum + x, 0) / of.length;
  const [ma, mb] = [mean(a), mean(b)];
  const product = a.reduce((sum, x, i) => sum + (x - ma) * ((b[i] ?? 0) - mb), 0);
  const norm = (of: readonly number[], m: number): number =>
    Math.sqrt(of.reduce((sum, x) => sum + (x - m) ** 2, 0));
  return product / (norm(a, ma) * norm(b, mb));
}
