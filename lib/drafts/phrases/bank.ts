import type { Voice } from "../records.ts";

/** Ways to say one thing. `plain` ones fit every tone; the others are added for theirs. */
export type Bank = {
  readonly plain: readonly string[];
  readonly warm?: readonly string[];
  readonly playful?: readonly string[];
};

/** The ways that fit a tone, in a fixed order. */
export function waysOf(bank: Bank, tone: Voice["tone"]): readonly string[] {
  const ways = tone === "plain" ? bank.plain : [...bank.plain, ...(bank[tone] ?? [])];
  return ways.map(endedOnce);
}

/** A sentence that ends with a name of its own mark has no second one: "Lids off!", not "Lids off!." */
function endedOnce(text: string): string {
  return text.replace(/([!?…][”’\u2069]*)\.$/u, "$1");
}

/**
 * The way whose turn it is: turns follow each other through the bank, so nothing comes back before
 * all the others were used.
 */
export function wayAt(bank: Bank, tone: Voice["tone"], turn: number): string {
  const ways = waysOf(bank, tone);
  const index = ((turn % ways.length) + ways.length) % ways.length;
  return ways[index] ?? "";
}
