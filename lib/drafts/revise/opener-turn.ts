import { bankFor } from "../phrases/phrase.ts";
import { waysOf } from "../phrases/bank.ts";
import type { Told } from "../template/scope.ts";
import { folded } from "../guards/private-words.ts";

/** Openers closer than this to one of last month's are passed over. Common practice, no source. */
const TOO_CLOSE = 0.6;

/** The first turn whose opener does not echo any of the recent ones; 0 when all of them do. */
export function openerTurn(told: Omit<Told, "salt">, recent: readonly Opener[]): number {
  const detail = told.facts.find((fact) => fact.kind === "theme")?.detail;
  if (detail?.kind !== "theme") return 0;
  const ways = waysOf(bankFor(detail), told.voice.tone);
  const turns = ways.map((_, turn) => turn);
  return (
    turns.find((turn) => {
      const text = ways[(told.turn + turn) % ways.length] ?? "";
      return recent.every((one) => echoOfTexts({ text, title: detail.title }, one) < TOO_CLOSE);
    }) ?? 0
  );
}

/** A first sentence and the theme it speaks of. */
export type Opener = { readonly text: string; readonly title: string };

/** How closely two openers echo each other, 0 to 1: shared words over all words, themes and numbers left out. */
function echoOfTexts(one: Opener, other: Opener): number {
  const [left, right] = [wordsOf(one), wordsOf(other)];
  const shared = [...left].filter((word) => right.has(word)).length;
  const all = new Set([...left, ...right]).size;
  return all === 0 ? 0 : shared / all;
}

const NUMBERS = new Set("one two three four five six seven once twice".split(" "));

function wordsOf({ text, title }: Opener): Set<string> {
  const words = folded(text.replaceAll(title, " ")).plain.match(/[\p{L}\p{N}]+/gu) ?? [];
  return new Set(words.filter((word) => !NUMBERS.has(word)));
}
