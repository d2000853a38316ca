import fc from "fast-check";
import { expect, test } from "vitest";
import { schedule, type SchedulingProblem } from "#lib/prep/index.ts";
import { brokenRules } from "#tests/support/check-schedule.ts";
import { exhaustiveMakespan } from "#tests/support/exhaustive-schedule.ts";
import { maxLagProjects } from "#tests/support/max-lag-projects.ts";
import { leastByPairs } from "#tests/support/pair-search.ts";

const RESOURCES = { cook: 2, oven: 1 };

/** Small problems; with `tight`, some lags have a greatest value, forwards or start to start. */
function problems(tasksMax: number, tight: boolean): fc.Arbitrary<SchedulingProblem> {
  const task = fc.record({
    duration: fc.integer({ min: 0, max: 4 }),
    cook: fc.integer({ min: 0, max: 2 }),
    oven: fc.integer({ min: 0, max: 1 }),
  });
  const lag = fc.record({
    pair: fc.tuple(fc.nat(tasksMax - 1), fc.nat(tasksMax - 1)),
    minLag: fc.integer({ min: -3, max: 3 }),
    room: tight ? fc.option(fc.nat(2), { nil: undefined, freq: 4 }) : fc.constant(undefined),
    from: fc.constantFrom("end" as const, "start" as const),
  });
  return fc
    .tuple(
      fc.array(task, { minLength: 2, maxLength: tasksMax }),
      fc.array(lag, { maxLength: tight ? 8 : 6 }),
    )
    .map(([tasks, lags]) => ({
      tasks: tasks.map(({ duration, ...demands }, index) => ({
        id: `t${index}`,
        duration,
        demands,
      })),
      precedences: lags.flatMap(({ pair: [one, other], minLag, room, from }) => {
        const [before, after] = [Math.min(one, other), Math.max(one, other)];
        if (before === after || after >= tasks.length) return [];
        const maxLag = room === undefined ? undefined : minLag + room;
        return [{ before: `t${before}`, after: `t${after}`, minLag, maxLag, from }];
      }),
      capacities: RESOURCES,
    }));
}

test("agrees with exhaustive search, with greatest lags too, and both outcomes occur", () => {
  const seen = { solved: 0, refuted: 0 };
  fc.assert(
    fc.property(problems(4, true), (problem) => {
      const found = schedule(problem);
      // No good schedule of 4 tasks of 4 units with lags of 3 is longer.
      const least = exhaustiveMakespan(problem, 18);
      if ("starts" in found) {
        seen.solved += 1;
        expect(brokenRules(problem, found.starts, found.makespan)).toEqual([]);
        expect(found).toMatchObject({ makespan: least, bound: least, optimal: true });
      } else {
        seen.refuted += 1;
        expect(found).toHaveProperty("conflict");
        expect(least).toBeUndefined();
      }
    }),
    { numRuns: 250, seed: 6 },
  );
  expect(seen.solved).toBeGreaterThan(20);
  expect(seen.refuted).toBeGreaterThan(20);
});

test("ten activities with greatest lags are always decided", () => {
  const seen = { solved: 0, refuted: 0 };
  fc.assert(
    fc.property(problems(10, true), (problem) => {
      const found = schedule(problem);
      if ("conflict" in found) seen.refuted += 1;
      else {
        seen.solved += 1;
        expect(found).toMatchObject({ optimal: true });
      }
    }),
    { numRuns: 200, seed: 10 },
  );
  expect(seen.solved).toBeGreaterThan(20);
  expect(seen.refuted).toBeGreaterThan(20);
});

test("ten activities with greatest lags end when a second, unlike search says, or never", () => {
  const seen = { confirmed: 0, refuted: 0 };
  const projects = maxLagProjects(200, 10, "two searches");
  for (const [index, problem] of projects.entries()) {
    const found = schedule(problem);
    if ("starts" in found)
      expect(brokenRules(problem, found.starts, found.makespan), `${index}`).toEqual([]);
    const least = leastByPairs(problem, 10_000);
    if (least === "gave up") continue;
    seen.confirmed += 1;
    if (least === undefined) {
      seen.refuted += 1;
      expect(found, `${index}`).toHaveProperty("conflict");
    } else
      expect(found, `${index}`).toMatchObject({ makespan: least, bound: least, optimal: true });
  }
  expect(seen.confirmed).toBeGreaterThan(185);
  expect(seen.refuted).toBeGreaterThan(20);
});

test("no resource overlaps, no lag breaks, nothing starts before 0", () => {
  fc.assert(
    fc.property(problems(12, true), fc.nat(60), (problem, budget) => {
      const found = schedule(problem, budget);
      if (!("starts" in found)) return;
      expect(brokenRules(problem, found.starts, found.makespan)).toEqual([]);
      expect(found.bound).toBeLessThanOrEqual(found.makespan);
    }),
    { numRuns: 200, seed: 7 },
  );
});

test("a larger budget never gives a later end or a weaker proof", () => {
  fc.assert(
    fc.property(problems(14, false), fc.nat(40), fc.nat(200), (problem, small, more) => {
      const before = schedule(problem, small);
      const after = schedule(problem, small + more);
      if (!("starts" in before)) return;
      expect(after).toHaveProperty("starts");
      if (!("starts" in after)) return;
      expect(after.makespan).toBeLessThanOrEqual(before.makespan);
      expect(after.bound).toBeGreaterThanOrEqual(before.bound);
    }),
    { numRuns: 150, seed: 8 },
  );
});

test("the order of tasks does not change the proven makespan", () => {
  fc.assert(
    fc.property(problems(8, true), (problem) => {
      const found = schedule(problem);
      const mirrored = schedule({ ...problem, tasks: [...problem.tasks].reverse() });
      const outcome = (of: typeof found) => ("starts" in of ? of.makespan : "none");
      expect(outcome(mirrored)).toBe(outcome(found));
    }),
    { numRuns: 100, seed: 9 },
  );
});
