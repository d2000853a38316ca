import { planRuns } from "#lib/shopping/index.ts";
import { randomRuns } from "#tests/support/random-runs.ts";

const SIZES = [
  { items: 45, shops: 5 },
  { items: 70, shops: 6 },
];
const WEEKS = 10;

/** Gap left, share proven, steps and seconds of planning invented weeks with seven shopping days. */
export function benchShopping(): { name: string; value: number; unit: string }[] {
  return SIZES.flatMap(({ items, shops }) => {
    const runs = Array.from({ length: WEEKS }, (_, seed) => {
      const problem = randomRuns({ seed, items, shops, days: 7, withOpenedLives: true });
      const start = performance.now();
      const plan = planRuns(problem);
      return { ...plan, seconds: (performance.now() - start) / 1000 };
    });
    const gaps = runs.map((plan) => (100 * (plan.cost - plan.bound)) / plan.cost);
    const named = (what: string, value: number, unit: string) => ({
      name: `shopping, ${items} items × ${shops} shops, ${what}`,
      value,
      unit,
    });
    return [
      named("proven least", runs.filter((plan) => plan.proven).length, `of ${WEEKS}`),
      named("largest gap", Math.max(...gaps), "%"),
      named("median steps", median(runs.map((plan) => plan.steps)), "item plans"),
      named("median time", median(runs.map((plan) => plan.seconds)), "s"),
      named("longest time", Math.max(...runs.map((plan) => plan.seconds)), "s"),
    ];
  });
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? Number.NaN;
}
