import { describe, expect, test } from "vitest";
import { clockTime } from "#lib/calendar/index.ts";
import {
  bagAfter,
  bagConductance,
  celsius,
  checkLunch,
  CONSUMER_HOT_DAY,
  CONSUMER_SCHEME,
  HOT_FILL_MIN_C,
  hoursUntil,
  isTimeSensitive,
  JAR_KJ_PER_K,
  jarConductance,
  LATENT_KJ,
  outMinutesMax,
  perHourOf,
  RETAIL_SCHEME,
  RETAIL_SIX_HOURS,
  specificHeatOf,
  standardPerHour,
  temperatureAfter,
  USUAL_CARRYING,
  WATER_KJ,
  type Carrying,
  type Finding,
} from "#lib/safety/index.ts";
import { child, food, item, lunch } from "./box.ts";
import {
  ICE_BUDGET,
  JARS,
  LINES,
  SPECIFIC_HEATS,
  TIME_SENSITIVE,
  TURKEY,
  TURKEY_VARIANT,
} from "./heat.published.ts";

describe("Newton's law of cooling", () => {
  test.each([TURKEY, TURKEY_VARIANT])(
    "follows the textbook's turkey, $readF °F at 30 min",
    (row) => {
      const { startF, roomF, readF, readMinutes } = row;
      const reading = { startC: celsius(startF), roomC: celsius(roomF), readC: celsius(readF) };
      const perHour = perHourOf({ ...reading, waterMl: 1000, hours: readMinutes / 60 });
      if (!perHour.ok) throw new Error("The textbook's reading was refused.");
      if (row === TURKEY) expect(perHour.value / 60).toBeCloseTo(TURKEY.perMinute, 6);
      const lump = { startC: celsius(startF), roomC: celsius(roomF), perHour: perHour.value };
      for (const { minutes, fahrenheit, off } of row.after)
        expect(
          Math.abs(temperatureAfter(lump, minutes / 60) - celsius(fahrenheit)) * 1.8,
        ).toBeLessThanOrEqual(off);
      for (const { minutes, fahrenheit, off } of row.until)
        expect(Math.abs(hoursUntil(lump, celsius(fahrenheit)) * 60 - minutes)).toBeLessThanOrEqual(
          off,
        );
    },
  );
  test("a reading that no cooling can give is refused", () => {
    const row = { waterMl: 300, startC: 90, hours: 5, roomC: 20 };
    for (const readC of [20, 15, 90, 95])
      expect(perHourOf({ ...row, readC })).toMatchObject({ problem: { kind: "not-between" } });
    expect(perHourOf({ ...row, readC: 60, hours: 0 })).toMatchObject({
      problem: { kind: "no-time" },
    });
    expect(perHourOf({ ...row, startC: 4, readC: 12 })).toMatchObject({ ok: true });
  });
});

describe("jars of the test standard", () => {
  test.each(JARS)("$capacityMl mL keeps $leastC °C for 6 hours when full of water", (row) => {
    const perHour = standardPerHour(row.capacityMl);
    const full = { startC: 95, roomC: 20, perHour };
    expect(temperatureAfter(full, 6)).toBeCloseTo(row.leastC, 9);
    // The same through the heat it passes and what it holds.
    const kjPerK = (row.capacityMl / 1000) * WATER_KJ + JAR_KJ_PER_K;
    expect(jarConductance(row.capacityMl, perHour) / kjPerK).toBeCloseTo(perHour, 9);
    if (!("perHour" in row)) return;
    expect(perHour).toBeCloseTo(row.perHour, 3);
    expect(hoursUntil(full, 60)).toBeCloseTo(row.to60From95, 2);
    const advised = { ...full, startC: HOT_FILL_MIN_C };
    expect(Math.abs(hoursUntil(advised, 60) - row.to60From74)).toBeLessThan(0.02);
    expect(Math.abs(temperatureAfter(advised, 4) - row.after4hC)).toBeLessThan(0.1);
  });
});

describe("bags and boxes", () => {
  // Area over the wall's resistance, from memory: 0.18 m², still air 0.25 m² K/W, foam 6 mm at 0.035 and 15 mm at 0.03 W/(m K).
  test.each([
    ["paper", 0.18 / 0.25],
    ["soft", 0.18 / (0.25 + 0.006 / 0.035)],
    ["hard", 0.18 / (0.25 + 0.015 / 0.03)],
  ] as const)("%s passes %d W/K", (kind, wattsPerK) => {
    expect(bagConductance(kind)).toBeCloseTo(wattsPerK * 3.6, 9);
  });
});

describe("the lines of the schemes", () => {
  test.each(LINES)(
    "$fahrenheit °F is $celsius °C ($source)",
    ({ fahrenheit, celsius: printed }) => {
      expect(Math.abs(celsius(fahrenheit) - printed)).toBeLessThanOrEqual(0.25);
    },
  );
  test("consumers: 40 and 140 °F for 2 hours, 1 hour above 90 °F; the trade apart: 41 and 135 °F, 4 or 6 hours", () => {
    expect(CONSUMER_SCHEME).toMatchObject({
      coldMaxC: celsius(40),
      hotMinC: 60,
      outMinutesMax: 120,
    });
    expect(CONSUMER_HOT_DAY).toEqual({ aboveC: celsius(90), outMinutesMax: 60 });
    expect([outMinutesMax(21), outMinutesMax(32.2), outMinutesMax(32.3)]).toEqual([120, 120, 60]);
    expect(RETAIL_SCHEME).toMatchObject({ coldMaxC: 5, outMinutesMax: 240 });
    expect(RETAIL_SCHEME.hotMinC).toBeCloseTo(57.2, 1);
    expect(RETAIL_SIX_HOURS.outMinutesMax).toBe(360);
    expect(CONSUMER_SCHEME.name).not.toBe(RETAIL_SCHEME.name);
  });
});

describe("foods", () => {
  test.each(SPECIFIC_HEATS)("$food: $kj kJ/(kg K) ($source)", ({ food: id, kj }) => {
    expect(specificHeatOf(food(id))).toBe(kj);
  });
  test.each(TIME_SENSITIVE)("$food: time-sensitive $is ($because)", ({ food: id, is }) => {
    expect(isTimeSensitive(food(id))).toBe(is);
  });
});

describe("cold sources", () => {
  test("200 g of ice takes 66.8 kJ: it cools a kilo of food by 18.6 K", () => {
    const { iceKg, foodKjPerK, meltsKj, coolsK } = ICE_BUDGET;
    expect(iceKg * LATENT_KJ).toBeCloseTo(meltsKj, 6);
    const after = bagAfter(
      // A bag that passes nothing, with ice at 0 °C that touches the food well.
      { foodKjPerK, foodC: coolsK, iceKg, iceC: 0, conductance: 0, contact: 40, roomC: 30 },
      24,
      0,
    );
    expect(after.foodC).toBeCloseTo(0, 1);
    expect(after.iceC).toBeCloseTo(0, 1);
  });
});

describe("what the check says", () => {
  const check = (
    carrying: Partial<Carrying>,
    ids: readonly string[],
    outside: number | null = null,
  ): Finding[] =>
    checkLunch(
      {
        ...lunch(...ids.map((id) => item(id))),
        outside: outside === null ? null : { celsius: outside, isTyped: true },
      },
      {
        ...{ children: [child()], rules: [], scheme: "off" as const },
        journey: {
          carrying: { ...USUAL_CARRYING, ...carrying },
          ...{ departure: clockTime(470), lunchAt: clockTime(735) },
        },
      },
    );
  const BOX = ["cheddar-cheese", "plain-yogurt", "white-bread"];

  test("without a cold source a chilled box is out too long, and one thing that would do is named", () => {
    const [finding] = check({ packs: 0 }, BOX);
    expect(finding).toMatchObject({ kind: "temperature", level: "look", mayKeep: true });
    expect(finding?.sentence).toMatch(
      /^Cheddar cheese and plain yogurt: about \d+ °C \(\d+ to \d+\) at 12:15, above 4.4 °C for about 4 h/,
    );
    expect(finding?.remedy).toMatch(/two more cold packs would be enough/);
    expect(finding?.sources).toEqual(expect.arrayContaining(["heat-fsis", "heat-tcs"]));
  });
  test("two cold sources in an insulated bag are enough in the middle of the model; its unkind end leaves a note", () => {
    expect(check({}, BOX).map(({ level }) => level)).toEqual(["note"]);
    expect(check({}, ["white-bread", "banana"])).toEqual([]);
  });
  test("on a day above 32.2 °C the hour counts, and the same box needs more", () => {
    const [mild] = check({ packs: 1, packGrams: 400 }, BOX);
    const [hot] = check({ packs: 1, packGrams: 400 }, BOX, 34);
    expect(mild?.sentence).toContain("allows 2 h");
    expect(hot?.sentence).toContain("allows 1 h");
    expect(hot?.level).toBe("look");
  });
  test("hot food at 74 °C in a jar that just meets the standard is out too long (the trap of the advice)", () => {
    const [finding] = check({}, ["vegetable-soup"]);
    expect(finding).toMatchObject({ level: "look" });
    expect(finding?.sentence).toContain("below 60 °C");
    expect(finding?.remedy).toContain("fills to the top");
    const read = { waterMl: 350, startC: 92, hours: 5, readC: 80, roomC: 20 };
    expect(check({ jarMl: 350, fillC: 95, jarReading: read }, ["vegetable-soup"])).toEqual([]);
  });
  test("cut produce that no code names is never more than a note", () => {
    expect(check({ packs: 0 }, ["carrot-sticks", "apple-slices"])).toMatchObject([
      { level: "note" },
    ]);
    expect(check({}, ["carrot-sticks"])).toEqual([]);
  });
});
