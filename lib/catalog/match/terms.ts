import pluralize from "pluralize";
import { stemmer } from "stemmer";
import { clausesOf } from "./clauses.ts";
import { synonymsFrom } from "./synonyms.ts";
import { SILENT } from "./word-roles.ts";

/** One word of a phrase, in the singular and stemmed, with where it stood. */
export type Term = {
  readonly word: string;
  readonly stem: string;
  /** Number of the clause it stood in; 0 is what the phrase is about. */
  readonly clause: number;
  /** After "with", beside "or", or before "flavored": says little of what the food is. */
  readonly isAside: boolean;
  /** Last telling word of the first clause: what the phrase is about. */
  readonly isHead: boolean;
};

type Placed = { readonly word: string; readonly clause: number; readonly isAside: boolean };

/** Turns a word as typed into the word or words meant. */
export type Mend = (word: string) => readonly string[];

/** Words whose last letters only look like a plural. */
const NOT_PLURAL = new Set(
  "hummus asparagus couscous molasses swiss greens brussels citrus".split(" "),
);

/**
 * The telling words of a phrase, synonyms resolved. A description turned round at its commas
 * ("Beans, snap, green") is read in its natural order when `turned` is set.
 */
export function termsOf(phrase: string, turned = false, mend: Mend = (word) => [word]): Term[] {
  const placed = clausesOf(phrase)
    .flatMap(({ text, isAside }, clause) => placedWords(text, clause, isAside))
    .flatMap((found) => mend(found.word).map((word) => ({ ...found, word })));
  const ordered = turned ? turnRound(placed) : placed;
  return withHead(withSynonyms(ordered)).filter(({ word }) => !SILENT.has(word));
}

/** What the plural rules get wrong among foods. */
const ODD_SINGULARS: Record<string, string> = {
  brownies: "brownie",
  smoothies: "smoothie",
  leaves: "leaf",
  loaves: "loaf",
  chives: "chive",
  olives: "olive",
};

/** A word in the singular: "tomatoes" is "tomato". */
export function singularOf(word: string): string {
  if (NOT_PLURAL.has(word) || word.length < 3) return word;
  return ODD_SINGULARS[word] ?? pluralize.singular(word);
}

/** Stem by the Porter algorithm (M. F. Porter 1980, "An algorithm for suffix stripping"). */
export function stemOf(word: string): string {
  return stemmer(word);
}

function placedWords(text: string, clause: number, isAside: boolean): Placed[] {
  const raw = text.match(/[\p{L}\d%]+/gu) ?? [];
  const isFlavour = (word: string): boolean => /^flavou?r(?:ed)?$/.test(word);
  // "sour cream and onion flavor" after a comma is a flavour as a whole.
  const isAllFlavour = clause > 0 && raw.some(isFlavour);
  return raw.flatMap((found, index) => {
    if (/^\d+$/.test(found)) return [];
    const before = raw[index - 1];
    const next = raw[index + 1] ?? "";
    const aside = isAside || isAllFlavour || before === "or" || isFlavour(next);
    return [{ word: singularOf(found), clause, isAside: aside }];
  });
}

function turnRound(placed: readonly Placed[]): Placed[] {
  const last = Math.max(0, ...placed.map(({ clause }) => clause));
  const turned: Placed[] = [];
  for (let clause = last; clause >= 0; clause -= 1) {
    turned.push(...placed.filter((word) => word.clause === clause));
  }
  return turned;
}

function withSynonyms(placed: readonly Placed[]): Placed[] {
  const resolved: Placed[] = [];
  for (let at = 0; at < placed.length;) {
    const here = placed[at];
    if (!here) break;
    const synonym = synonymsFrom(here.word).find(({ said }) =>
      said.every((word, ahead) => placed[at + ahead]?.word === word),
    );
    if (!synonym) {
      resolved.push(here);
      at += 1;
      continue;
    }
    const taken = placed.slice(at, at + synonym.said.length);
    const clause = Math.min(...taken.map((word) => word.clause));
    const isAside = taken.every((word) => word.isAside);
    for (const word of synonym.meant) resolved.push({ word, clause, isAside });
    at += synonym.said.length;
  }
  return resolved;
}

function withHead(placed: readonly Placed[]): Term[] {
  const main = placed.filter(
    ({ word, clause, isAside }) => clause === 0 && !isAside && !SILENT.has(word),
  );
  const head = main.at(-1);
  return placed.map((word) => ({ ...word, stem: stemOf(word.word), isHead: word === head }));
}
