import fc from "fast-check";
import { expect, test } from "vitest";
import { mergeTicks, nextStamp, tickLine, type Tick, type Ticks } from "#lib/shopping/index.ts";

const tick: fc.Arbitrary<Tick> = fc.record({
  lineId: fc.constantFrom("a", "b", "c", "d"),
  state: fc.constantFrom("open", "bought", "none-left", "dropped"),
  packs: fc.integer({ min: 0, max: 3 }),
  paidCents: fc.option(fc.integer({ min: 0, max: 500 })),
  stamp: fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.constantFrom("phone", "tablet"))
    .map(([time, device]) => `${String(time).padStart(12, "0")}:${device}`),
});
const ticks: fc.Arbitrary<Ticks> = fc
  .array(tick, { maxLength: 8 })
  .map((list) => new Map(list.map((one) => [one.lineId, one])));

function entries(of: Ticks): Tick[] {
  return [...of.values()];
}

test("two people's ticks agree in the end, whatever the order, grouping or repetition", () => {
  fc.assert(
    fc.property(ticks, ticks, ticks, (one, other, third) => {
      const merged = mergeTicks(one, other);
      expect(entries(mergeTicks(other, one))).toEqual(entries(merged));
      expect(entries(mergeTicks(merged, other))).toEqual(entries(merged));
      expect(entries(mergeTicks(merged, third))).toEqual(
        entries(mergeTicks(one, mergeTicks(other, third))),
      );
      expect(merged.size).toBe(new Set([...one.keys(), ...other.keys()]).size);
    }),
  );
});

test("a change made after seeing the other's wins; a dropped line stays dropped against older ticks", () => {
  fc.assert(
    fc.property(ticks, ticks, (one, other) => {
      const seen = mergeTicks(one, other);
      const change = { lineId: "a", state: "dropped", packs: 0, paidCents: null } as const;
      const dropped = tickLine(seen, change, "phone");
      expect(mergeTicks(mergeTicks(dropped, one), other).get("a")?.state).toBe("dropped");
      expect(entries(seen).every((old) => old.stamp < nextStamp(seen, "phone"))).toBe(true);
    }),
  );
});
