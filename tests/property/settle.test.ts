import fc from "fast-check";
import { expect, test } from "vitest";
import { settle, type VerdictEntry } from "#lib/reactions/index.ts";

type Act = { device: string; eaten: number | null; face: number | null };

/**
 * Entries of two phones without a line: each phone sees the server only now and then. `deliver` says
 * in which order the server gets them; what a phone had seen is fixed when the entry is made.
 */
const acts = fc.array(
  fc.record({
    device: fc.constantFrom("one", "two"),
    eaten: fc.option(fc.integer({ min: 0, max: 4 }), { nil: null }),
    face: fc.option(fc.constantFrom(0, 50, 100), { nil: null }),
  }),
  { minLength: 1, maxLength: 9 },
);

/** Both phones go offline after `shared` entries that both had seen; later ones arrive in any order. */
function arrivals(made: readonly Act[], shared: number, order: readonly number[]): VerdictEntry[] {
  const entries = made.map(({ device, eaten, face }, index) => ({
    id: `entry-${index}`,
    device,
    madeAt: new Date(Date.UTC(2026, 2, 11, 15, 0, index)).toISOString(),
    baseRevision: Math.min(index, shared),
    change: { ...(eaten === null ? {} : { eaten }), ...(face === null ? {} : { face }) },
  }));
  const early = entries.slice(0, shared);
  const late = order.flatMap((at) => entries.slice(shared)[at] ?? []);
  return [...early, ...late].map((entry, index) => ({ ...entry, revision: index + 1 }));
}

test("offline entries of two phones come to the same, in whatever order they arrive", () => {
  let conflicts = 0;
  fc.assert(
    fc.property(acts, fc.nat(4), fc.integer(), (made, shared, seed) => {
      const known = Math.min(shared, made.length);
      const inTurn = made.slice(known).map((_, index) => index);
      const shuffled = inTurn.toSorted(
        (a, b) => ((a * 7919 + seed) % 13) - ((b * 7919 + seed) % 13),
      );
      const one = settle(arrivals(made, known, inTurn));
      expect(settle(arrivals(made, known, shuffled))).toEqual(one);
      expect(settle(arrivals(made, known, inTurn.toReversed()))).toEqual(one);
      conflicts += one.conflicts.length;
    }),
    { seed: 11, numRuns: 400 },
  );
  expect(conflicts).toBeGreaterThan(50);
});

test("one phone never disagrees with itself: its last word stands", () => {
  fc.assert(
    fc.property(acts, (made) => {
      const own = made.map((act) => ({ ...act, device: "one" }));
      const order = own.map((_, index) => index).toReversed();
      const { values, conflicts } = settle(arrivals(own, 0, order));
      expect(conflicts).toEqual([]);
      expect(values.eaten).toBe(own.findLast(({ eaten }) => eaten !== null)?.eaten ?? null);
    }),
    { seed: 12, numRuns: 200 },
  );
});

test("two phones that say different things keep both values; one that saw both settles it", () => {
  const entry = (device: string, eaten: number, baseRevision: number, revision: number) => ({
    ...{ id: `${device}-${revision}`, device, baseRevision, revision },
    ...{ madeAt: `2026-03-11T15:0${revision}:00.000Z`, change: { eaten } },
  });
  const clash = [entry("one", 3, 0, 1), entry("two", 1, 0, 2)];
  expect(settle(clash)).toMatchObject({
    values: { eaten: 1 },
    conflicts: [{ field: "eaten", said: [{ value: 1 }, { value: 3 }] }],
  });
  const chosen = settle([...clash, entry("one", 3, 2, 3)]);
  expect(chosen).toMatchObject({ values: { eaten: 3 }, conflicts: [] });
  expect(settle([entry("one", 3, 0, 1), entry("two", 3, 0, 2)]).conflicts).toEqual([]);
});
