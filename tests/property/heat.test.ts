import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clockTime } from "#lib/calendar/index.ts";
import {
  bagAfter,
  BAG_KINDS,
  Carrying,
  checkLunch,
  CONSUMER_SCHEME,
  heatGivenOff,
  hoursUntil,
  predictCold,
  predictHot,
  temperatureAfter,
  type Bag,
} from "#lib/safety/index.ts";
import { child, item, lunch } from "#tests/unit/safety/box.ts";

/** In thousandths: no thermometer reads finer, and 1e-160 °C is rounding, not heat. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.round(min * 1000), max: Math.round(max * 1000) })
    .map((thousandths) => thousandths / 1000);
const lump = fc.record({
  startC: between(-10, 100),
  roomC: between(-10, 45),
  perHour: between(0.01, 3),
});
const bag: fc.Arbitrary<Bag> = fc.record({
  foodKjPerK: between(0.05, 4),
  foodC: between(0, 30),
  iceKg: fc.oneof(fc.constant(0), between(0.02, 1)),
  iceC: between(-25, 10),
  conductance: between(0.1, 4),
  contact: between(0, 8),
  roomC: between(-5, 45),
});
const carrying: fc.Arbitrary<Carrying> = fc
  .record({
    bag: fc.constantFrom(...BAG_KINDS),
    packs: fc.nat(4),
    packGrams: fc.integer({ min: 50, max: 400 }),
    isPrechilled: fc.boolean(),
    freezesDrink: fc.boolean(),
    jarMl: fc.integer({ min: 150, max: 900 }),
    isJarPreheated: fc.boolean(),
    fillC: fc.integer({ min: 60, max: 100 }),
    indoorC: fc.integer({ min: 10, max: 38 }),
  })
  .map((drawn) => Carrying.parse(drawn));
const BOX = ["cheddar-cheese", "plain-yogurt", "carrot-sticks", "white-bread", "milk"].map((id) =>
  item(id),
);
const SOUP = item("vegetable-soup");
const around = (hours: number, roomC = 21) => ({ hours, roomC, roomOffK: 2 });

describe("one lump", () => {
  test("gives off what flows through its wall (numerical integral, Simpson's rule)", () => {
    fc.assert(
      fc.property(lump, between(0.1, 8), between(0.1, 5), (one, hours, kjPerK) => {
        const flow = (at: number): number =>
          one.perHour * kjPerK * (temperatureAfter(one, at) - one.roomC);
        const [count, width] = [2000, hours / 2000];
        let sum = flow(0) + flow(hours);
        for (let step = 1; step < count; step += 1) sum += (step % 2 ? 4 : 2) * flow(step * width);
        const through = (sum * width) / 3;
        expect(Math.abs(through - heatGivenOff(one, kjPerK, hours))).toBeLessThan(
          1e-6 * (1 + Math.abs(through)),
        );
      }),
    );
  });
  test("the time until a line is the time at which it is there", () => {
    fc.assert(
      fc.property(lump, between(-10, 100), (one, line) => {
        const hours = hoursUntil(one, line);
        if (hours > 0 && hours < 50) expect(temperatureAfter(one, hours)).toBeCloseTo(line, 6);
        if (hours === Infinity)
          expect((temperatureAfter(one, 20) - line) * (one.startC - line)).toBeGreaterThan(0);
      }),
    );
  });
  test("never passes the room's temperature and only nears it", () => {
    fc.assert(
      fc.property(lump, between(0, 6), between(0.01, 6), (one, hours, more) => {
        const [early, late] = [temperatureAfter(one, hours), temperatureAfter(one, hours + more)];
        expect(Math.abs(late - one.roomC)).toBeLessThanOrEqual(Math.abs(early - one.roomC) + 1e-9);
        expect((late - one.roomC) * (one.startC - one.roomC)).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });
});

describe("the bag", () => {
  test("books every kilojoule: what came in is what is held more", () => {
    fc.assert(
      fc.property(bag, between(0.1, 8), (one, hours) => {
        const { heldBeforeKj, heldAfterKj, heatInKj } = bagAfter(one, hours, 4.4);
        expect(Math.abs(heldAfterKj - heldBeforeKj - heatInKj)).toBeLessThan(
          1e-6 * (1 + Math.abs(heldBeforeKj)),
        );
      }),
    );
  });
  test("stays between its coldest and its warmest neighbour", () => {
    fc.assert(
      fc.property(bag, between(0.1, 8), (one, hours) => {
        const all = [one.foodC, one.roomC, ...(one.iceKg > 0 ? [one.iceC] : [])];
        const { foodC, iceC } = bagAfter(one, hours, 4.4);
        for (const now of one.iceKg > 0 ? [foodC, iceC] : [foodC]) {
          expect(now).toBeGreaterThanOrEqual(Math.min(...all) - 1e-6);
          expect(now).toBeLessThanOrEqual(Math.max(...all) + 1e-6);
        }
      }),
    );
  });
  test("without a cold source agrees with the closed form within a tenth of a degree", () => {
    fc.assert(
      fc.property(bag, between(0.1, 8), (one, hours) => {
        const alone = { ...one, iceKg: 0 };
        const perHour = one.conductance / one.foodKjPerK;
        const exact = temperatureAfter({ startC: one.foodC, roomC: one.roomC, perHour }, hours);
        const off = Math.abs(bagAfter(alone, hours, 4.4).foodC - exact);
        // The explicit step loses at most half a step's share of the way to go: stated with the model.
        expect(off).toBeLessThan(0.03 * Math.abs(one.foodC - one.roomC) + 0.1);
      }),
    );
  });
});

describe("a lunch later in the day is never judged cooler", () => {
  test("cold food: minutes out and the warmest it was only grow with the hour", () => {
    fc.assert(
      fc.property(carrying, between(0.2, 5), between(0.05, 3), (how, hours, more) => {
        const early = predictCold(BOX, 1, how, around(hours, how.indoorC));
        const late = predictCold(BOX, 1, how, around(hours + more, how.indoorC));
        for (const end of ["mid", "kind", "unkind"] as const) {
          expect(late?.[end].minutesOut).toBeGreaterThanOrEqual(
            (early?.[end].minutesOut ?? 0) - 1e-9,
          );
          expect(late?.[end].worstC).toBeGreaterThanOrEqual((early?.[end].worstC ?? 0) - 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
  test("hot food: it only cools, and minutes out only grow", () => {
    fc.assert(
      fc.property(carrying, between(0.2, 5), between(0.05, 3), (how, hours, more) => {
        const early = predictHot(SOUP, 1, how, around(hours, how.indoorC));
        const late = predictHot(SOUP, 1, how, around(hours + more, how.indoorC));
        expect(late.mid.atLunchC).toBeLessThanOrEqual(early.mid.atLunchC + 1e-9);
        expect(late.mid.minutesOut).toBeGreaterThanOrEqual(early.mid.minutesOut - 1e-9);
      }),
    );
  });
  test("the finding never gets milder as lunch gets later", () => {
    const rank = (how: Carrying, minutes: number): number => {
      const findings = checkLunch(lunch(SOUP, ...BOX), {
        ...{ children: [child()], rules: [], scheme: "off" as const },
        journey: { carrying: how, departure: clockTime(470), lunchAt: clockTime(minutes) },
      });
      return findings.reduce((sum, { level }) => sum + (level === "look" ? 2 : 1), 0);
    };
    fc.assert(
      fc.property(
        carrying,
        fc.integer({ min: 480, max: 800 }),
        fc.integer({ min: 1, max: 120 }),
        (how, at, more) => {
          expect(rank(how, at + more)).toBeGreaterThanOrEqual(rank(how, at));
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe("what helps, helps", () => {
  test("the range holds the middle, and lies wider where nothing was read", () => {
    fc.assert(
      fc.property(carrying, between(0.5, 6), (how, hours) => {
        const cold = predictCold(BOX, 1, how, around(hours, how.indoorC));
        const hot = predictHot(SOUP, 1, how, around(hours, how.indoorC));
        for (const one of [cold, hot]) {
          expect(one?.kind.minutesOut).toBeLessThanOrEqual((one?.mid.minutesOut ?? 0) + 1e-9);
          expect(one?.unkind.minutesOut).toBeGreaterThanOrEqual((one?.mid.minutesOut ?? 0) - 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
  test("another cold pack, a colder room or a bigger pot of soup never makes it worse", () => {
    fc.assert(
      fc.property(carrying, between(0.5, 6), (how, hours) => {
        const out = (change: Partial<Carrying>, roomC = how.indoorC): number =>
          predictCold(BOX, 1, { ...how, ...change }, around(hours, roomC))?.mid.minutesOut ?? 0;
        expect(out({ packs: how.packs + 1 })).toBeLessThanOrEqual(out({}) + 1);
        expect(out({}, how.indoorC - 5)).toBeLessThanOrEqual(out({}) + 1e-9);
        const soup = (factor: number): number =>
          predictHot(SOUP, factor, how, around(hours, how.indoorC)).mid.minutesOut;
        expect(soup(1.3)).toBeLessThanOrEqual(soup(1) + 1e-9);
      }),
      { numRuns: 60 },
    );
  });
  test("judged at the consumer line", () => {
    expect(CONSUMER_SCHEME.coldMaxC).toBeCloseTo(4.44, 2);
  });
});
