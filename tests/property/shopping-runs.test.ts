import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareFractions, fractionOf, randomFrom, ZERO } from "#lib/base/index.ts";
import {
  boughtLines,
  leftOver,
  packsFor,
  planRuns,
  planRunsWithSolver,
  replanRuns,
  standingOf,
  tickLine,
  type RunLine,
  type RunProblem,
  type Ticks,
} from "#lib/shopping/index.ts";
import { leastCostByTrying } from "#tests/support/brute-runs.ts";
import { faultsOf } from "#tests/support/check-runs.ts";
import { highsMip } from "#tests/support/highs-mip.ts";
import { randomRuns } from "#tests/support/random-runs.ts";

const seeds = fc.integer({ min: 0, max: 1_000_000 });

/** A week with stock on hand and with decisions of the user. */
function withDecisions(problem: RunProblem, seed: number): RunProblem {
  const random = randomFrom(`decisions ${seed}`);
  const items = problem.items.map((item) => ({
    ...item,
    supplies:
      random.below(3) > 0
        ? []
        : item.needs.slice(0, 1).map(({ day, grams }, index) => ({
            id: `${item.id}-lot-${index}`,
            grams,
            from: null,
            until: random.below(2) ? day : null,
            openedDays: item.lives.openedDays,
            isOpen: false,
          })),
  }));
  const lines = items.flatMap((item) => {
    const [offer] = item.offers;
    const trip = problem.trips.find((candidate) => candidate.shopId === offer?.shopId);
    if (!offer || !trip || random.below(4) > 0) return [];
    return [{ ...offer, itemId: item.id, day: trip.day, packs: 1, why: "by-hand" as const }];
  });
  const notTo = [
    { shopId: random.pick(problem.trips).shopId, day: random.pick(problem.trips).day },
  ];
  return { ...problem, items, overrides: { ...problem.overrides, lines, notTo } };
}

describe("runs", () => {
  test("serve every need, keep every food within its lives, and say what they cannot serve", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const shape = { seed, items: 7, shops: 3, days: 6, withOpenedLives: true };
        const problem = withDecisions(randomRuns(shape), seed);
        expect(faultsOf(problem, planRuns(problem))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test("cost exactly what trying every trip and every pack finds, opened lives included", () => {
    let opened = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const shape = { seed, items: 3, shops: 2, days: 4, withOpenedLives: true };
        const random = randomRuns(shape);
        const problem = { ...random, items: random.items.map(served(random)) };
        opened += problem.items.filter((item) => item.lives.openedDays !== null).length;
        const plan = planRuns(problem);
        expect(plan.proven).toBe(true);
        expect(plan.cost).toBeCloseTo(leastCostByTrying(problem), 4);
      }),
      { numRuns: 60 },
    );
    expect(opened).toBeGreaterThan(20);
  });

  test("cost what a mixed-integer solver proves", async () => {
    await fc.assert(
      fc.asyncProperty(seeds, async (seed) => {
        const problem = randomRuns({ seed, items: 5, shops: 3, days: 4, withOpenedLives: false });
        const ours = planRuns(problem);
        const none = { steps: 1, gap: 0 };
        const solvers = await planRunsWithSolver(problem, highsMip(), none);
        expect(solvers.proven && ours.proven).toBe(true);
        expect(ours.cost).toBeCloseTo(solvers.cost, 3);
      }),
      { numRuns: 10 },
    );
  });

  test("a bound that stops early never passes the least cost", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = randomRuns({ seed, items: 8, shops: 3, days: 6, withOpenedLives: true });
        const full = planRuns(problem);
        const short = planRuns(problem, { steps: 600, gap: 0 });
        expect(short.bound).toBeLessThanOrEqual(full.cost + 1e-3);
        expect(short.cost).toBeGreaterThanOrEqual(full.cost - 1e-3);
        expect(short.proven).toBe(short.cost - short.bound < 1e-3);
      }),
      { numRuns: 30, examples: [[472100]] },
    );
  });

  test("the order of items, needs, offers and trips changes no cost and no total", () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = randomRuns({ seed, items: 6, shops: 3, days: 5, withOpenedLives: true });
        const { shuffle } = randomFrom(`order ${seed}`);
        const items = shuffle(problem.items).map((item) => ({
          ...item,
          needs: shuffle(item.needs),
          offers: shuffle(item.offers),
        }));
        const shuffled = { ...problem, items, trips: shuffle(problem.trips) };
        const [one, other] = [planRuns(problem), planRuns(shuffled)];
        expect(other.cost).toBeCloseTo(one.cost, 3);
        expect(usedGrams(other)).toBeCloseTo(usedGrams(one), 4);
      }),
      { numRuns: 30 },
    );
  });

  test("changing one lunch changes only the lines of its food, and what was ticked stays ticked", () => {
    let untouched = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const before = randomRuns({ seed, items: 7, shops: 3, days: 6, withOpenedLives: true });
        const plan = planRuns(before);
        const random = randomFrom(`change ${seed}`);
        const changed = random.pick(before.items).id;
        const grown = before.items.map((item) =>
          item.id === changed
            ? { ...item, needs: [...item.needs, ...item.needs.slice(0, 1)] }
            : item,
        );
        const all = linesOf(plan);
        const ticks = all
          .filter(() => random.below(3) === 0)
          .reduce<Ticks>((known, { id, packs }) => {
            const change = { lineId: id, state: "bought", packs, paidCents: null } as const;
            return tickLine(known, change, "phone");
          }, new Map());
        const lines = boughtLines(before, plan, ticks);
        const after = { ...before, items: grown, overrides: { ...before.overrides, lines } };
        const next = replanRuns(standingOf(before, plan), after);
        expect(faultsOf(after, next)).toEqual([]);
        const kept = linesOf(next);
        for (const line of all) {
          const isTouched = line.itemId === changed || lines.some((l) => l.itemId === line.itemId);
          const now = kept.find((candidate) => candidate.id === line.id);
          if (!isTouched) expect(now).toEqual(line);
          if (!isTouched) untouched += 1;
          if (ticks.has(line.id)) expect(now?.packs).toBeGreaterThanOrEqual(line.packs);
        }
        const cost = next.goodsCents + next.tripCents + next.wasteCents;
        expect(next.cost).toBeCloseTo(cost, 6);
        expect(next.bound).toBeLessThanOrEqual(next.cost + 1e-6);
      }),
      { numRuns: 40 },
    );
    expect(untouched).toBeGreaterThan(40);
  });
});

describe("quantities", () => {
  test("never too little is bought, and never a whole pack too much", () => {
    const thirds = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 12 }));
    fc.assert(
      fc.property(thirds, thirds, ([top, bottom], [packTop, packBottom]) => {
        const grams = fractionOf(top / bottom);
        const pack = fractionOf(packTop / packBottom);
        const packs = packsFor(grams, pack);
        const left = leftOver(grams, packs, pack);
        expect(compareFractions(left, ZERO)).toBeGreaterThanOrEqual(0);
        expect(compareFractions(left, pack)).toBeLessThan(0);
        expect(packs).toBe(Math.ceil((top * packBottom) / (bottom * packTop) - 1e-9));
      }),
    );
  });
});

function linesOf(plan: ReturnType<typeof planRuns>): RunLine[] {
  return plan.runs.flatMap((run) => run.lines);
}

/** Leaves out needs that no trip can serve, which trying cannot price. */
function served(problem: RunProblem): (item: RunProblem["items"][number]) => typeof item {
  const { unmet } = planRuns(problem);
  return (item) => ({
    ...item,
    needs: item.needs.filter(
      (need) => !unmet.some((miss) => miss.itemId === item.id && miss.day === need.day),
    ),
  });
}

function usedGrams(plan: ReturnType<typeof planRuns>): number {
  const lines = plan.runs.flatMap((run) => run.lines);
  return lines.flatMap((line) => line.uses).reduce((sum, use) => sum + use.grams, 0);
}
