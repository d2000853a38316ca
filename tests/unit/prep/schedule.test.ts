import { describe, expect, test } from "vitest";
import { schedule, type SchedulingProblem } from "#lib/prep/index.ts";
import { brokenRules } from "#tests/support/check-schedule.ts";
import { psplibInstances } from "#tests/support/psplib.ts";
import { FT06, jobShop, LA01 } from "./jobshop.published.ts";

const task = (id: string, duration: number, demands: Record<string, number> = {}) => ({
  id,
  duration,
  demands,
});

/** The schedule, checked; fails the test when there is none. */
function checked(problem: SchedulingProblem, budget?: number) {
  const found = schedule(problem, budget);
  if (!("starts" in found)) throw new Error(`no schedule: ${JSON.stringify(found)}`);
  expect(brokenRules(problem, found.starts, found.makespan)).toEqual([]);
  return found;
}

describe("published optima are proven", () => {
  test.each([
    { name: "ft06, 6 × 6", rows: FT06, optimum: 55 },
    { name: "la01, 10 × 5", rows: LA01, optimum: 666 },
  ])("job shop $name ends at $optimum", ({ rows, optimum }) => {
    expect(checked(jobShop(rows))).toMatchObject({
      makespan: optimum,
      bound: optimum,
      optimal: true,
    });
  });
});

describe("PSPLIB j30 (Kolisch & Sprecher 1996; optima Demeulemeester & Herroelen 1995)", () => {
  const instances = psplibInstances();
  test.runIf(instances.length > 0)("most of the 24 are proven, none wrongly", () => {
    const found = instances.map(({ name, problem, optimum }) => {
      const { makespan, bound, optimal } = checked(problem, 10_000);
      expect(makespan, name).toBeGreaterThanOrEqual(optimum);
      expect(bound, name).toBeLessThanOrEqual(optimum);
      expect(optimal, name).toBe(makespan === bound);
      return optimal;
    });
    expect(found.filter(Boolean).length).toBeGreaterThanOrEqual(21);
  });
  test.runIf(instances.length === 0)("left out: 24 instances, their folder is not here", () => {
    expect(instances).toEqual([]);
  });
});

describe("lags", () => {
  const two = [task("a", 3), task("b", 2)];

  test("run from the end of the first to the start of the second", () => {
    const precedences = [{ before: "a", after: "b", minLag: 4 }];
    expect(checked({ tasks: two, precedences, capacities: {} }).starts).toEqual({ a: 0, b: 7 });
  });

  test("run from start to start where asked", () => {
    const precedences = [{ before: "a", after: "b", minLag: 1, from: "start" as const }];
    expect(checked({ tasks: two, precedences, capacities: {} }).starts).toEqual({ a: 0, b: 1 });
  });

  test("a greatest lag makes the first wait for the second", () => {
    const tasks = [...two, task("c", 9, { oven: 1 }), task("d", 2, { oven: 1 })];
    const precedences = [
      { before: "c", after: "d", minLag: 0 },
      { before: "d", after: "b", minLag: 0 },
      { before: "a", after: "b", minLag: 0, maxLag: 1 },
    ];
    const { starts, optimal } = checked({ tasks, precedences, capacities: { oven: 1 } });
    expect(optimal).toBe(true);
    expect(starts["b"]).toBe(11);
    expect(starts["a"]).toBeGreaterThanOrEqual(7);
  });
});

describe("a proof that there is no schedule", () => {
  test("names the ring of lags and by how much it is too tight", () => {
    const tasks = [task("a", 3), task("b", 2), task("c", 1)];
    const precedences = [
      { before: "a", after: "b", minLag: 0 },
      { before: "b", after: "c", minLag: 0 },
      { before: "a", after: "c", minLag: 0, maxLag: 1 },
    ];
    const found = schedule({ tasks, precedences, capacities: {} });
    expect(found).toMatchObject({ conflict: { kind: "lags", excess: 1 } });
  });

  test("names the task that asks for more than there is", () => {
    const found = schedule({
      tasks: [task("a", 1, { oven: 2 })],
      precedences: [],
      capacities: { oven: 1 },
    });
    expect(found).toEqual({
      conflict: { kind: "demand", task: "a", resource: "oven", demand: 2, capacity: 1 },
    });
  });

  test("comes from the search where lags and capacities clash only together", () => {
    const tasks = [task("a", 3, { cook: 1 }), task("b", 3, { cook: 1 }), task("c", 1)];
    const precedences = ["a", "b"].map((before) => ({ before, after: "c", minLag: 0, maxLag: 2 }));
    const found = schedule({ tasks, precedences, capacities: { cook: 1 } });
    expect(found).toMatchObject({ conflict: { kind: "search" } });
  });
});

test("nothing to do ends at once", () => {
  expect(schedule({ tasks: [], precedences: [], capacities: {} })).toEqual({
    starts: {},
    makespan: 0,
    bound: 0,
    optimal: true,
  });
});

test.each([
  ["an id twice", { tasks: [task("a", 1), task("a", 2)], precedences: [] }],
  ["half a minute", { tasks: [task("a", 0.5)], precedences: [] }],
  [
    "an unknown task",
    { tasks: [task("a", 1)], precedences: [{ before: "a", after: "z", minLag: 0 }] },
  ],
])("%s is refused", (_, problem) => {
  expect(() => schedule({ ...problem, capacities: {} })).toThrow(RangeError);
});
