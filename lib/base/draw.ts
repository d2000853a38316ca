import type { Random } from "./random.ts";

/** A standard normal number (Box & Muller 1958, Ann. Math. Stat. 29:610–611). */
export function drawNormal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());
}

/** A share from Beta(a, b), both above 0, by two powers (Jöhnk 1964, Metrika 8:5–15); quick while a + b is small. */
export function drawBeta(random: Random, a: number, b: number): number {
  for (;;) {
    const x = random.next() ** (1 / a);
    const y = random.next() ** (1 / b);
    if (x + y <= 1 && x + y > 0) return x / (x + y);
  }
}
