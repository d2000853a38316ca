import { planRunsInWorker } from "#lib/use-cases/solver/plan-runs.ts";
import { endWaiting, warmUp } from "#lib/use-cases/solver/worker-pool.ts";
import { randomRuns } from "#tests/support/random-runs.ts";

const SIZES = [
  { items: 45, shops: 5, weeks: 24 },
  { items: 70, shops: 6, weeks: 12 },
];
const SECONDS = 5;

type Figure = { readonly name: string; readonly value: number; readonly unit: string };

/**
 * Invented weeks with seven shopping days, planned as the app does it when asked for a plan anew:
 * enumerated trips first, then the solver from there, in a worker. Half of the weeks have foods that
 * keep only for days once opened.
 */
export async function benchShopping(): Promise<Figure[]> {
  const figures: Figure[] = [];
  for (const { items, shops, weeks } of SIZES) {
    const runs: { readonly gap: number; readonly isProven: boolean; readonly seconds: number }[] =
      [];
    for (let seed = 0; seed < weeks; seed += 1) {
      warmUp(1);
      const withOpenedLives = seed % 2 === 0;
      const problem = randomRuns({ seed, items, shops, days: 7, withOpenedLives });
      const start = performance.now();
      const { cost, bound, proven: isProven } = await planRunsInWorker(problem, SECONDS);
      const seconds = (performance.now() - start) / 1000;
      runs.push({ gap: (100 * (cost - bound)) / cost, isProven, seconds });
    }
    const times = runs.map(({ seconds }) => seconds).sort((one, other) => one - other);
    const isInTime = ({ gap, seconds }: (typeof runs)[number]): boolean =>
      gap <= 1 && seconds <= SECONDS;
    const named = (what: string, value: number, unit: string): Figure => ({
      name: `shopping, ${items} items × ${shops} shops, ${what}`,
      value,
      unit,
    });
    figures.push(
      named("within 1 % in 5 s", runs.filter(isInTime).length, `of ${weeks}`),
      named("proven least", runs.filter(({ isProven }) => isProven).length, `of ${weeks}`),
      named("largest gap", Math.max(...runs.map(({ gap }) => gap)), "%"),
      named("median time", times[times.length >> 1] ?? Number.NaN, "s"),
      named("longest time", times.at(-1) ?? Number.NaN, "s"),
    );
  }
  await endWaiting();
  return figures;
}
