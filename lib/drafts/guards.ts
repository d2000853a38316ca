import type { Draft } from "./draft.ts";
import type { Fact } from "./facts.ts";

/** Something to mend before a draft is copied; `where` is a span of the sentence, in UTF-16 units. */
export interface Guard {
  readonly kind: "private word" | "promise of safety" | "no disclosure" | "no link";
  readonly sentence: number;
  readonly where: readonly [number, number];
  readonly fix: string;
}

const HIDDEN = /[\u00AD\u200B-\u200F\u2060\uFEFF]|\p{M}/gu;
const SAFETY = /(?<![\p{L}\p{N}])(?:safe|allergen[- ]?free|healthy)(?![\p{L}\p{N}])/giu;
const LINK_PROMISE = /\blinks? (?:is |are )?below\b/giu;

/** Every guard a draft trips. `privateWords`: names, school, street; matched without case, accents and hidden characters. */
export function guardsOf(
  draft: Draft,
  facts: readonly Fact[],
  privateWords: readonly string[],
): Guard[] {
  const hasLink = draft.sentences.some((one) => /https?:\/\//u.test(one.text));
  const inText = draft.sentences.flatMap(({ text }, sentence) => [
    ...privateSpans(text, privateWords).map((where) =>
      guard("private word", sentence, where, "Use the on-screen name, or leave it out."),
    ),
    ...spans(text, SAFETY).map((where) =>
      guard("promise of safety", sentence, where, "Say what is in it and point to the label."),
    ),
    ...(hasLink ? [] : spans(text, LINK_PROMISE)).map((where) =>
      guard("no link", sentence, where, "Add the link, or drop the promise of one."),
    ),
  ]);
  return [...inText, ...undisclosed(draft, facts)];
}

function undisclosed(draft: Draft, facts: readonly Fact[]): Guard[] {
  const owed = facts.filter((one) => one.kind === "disclosure");
  const opening = draft.sentences.slice(0, owed.length).map((one) => one.text);
  return owed
    .filter((one) => !opening.includes(one.text))
    .map((one) => guard("no disclosure", 0, [0, 0], `Begin with: ${one.text}`));
}

function privateSpans(text: string, words: readonly string[]): (readonly [number, number])[] {
  const { plain, at } = folded(text);
  return words
    .map((word) => folded(word).plain.trim())
    .filter((word) => word !== "")
    .flatMap((word) => spans(plain, wholeWord(word)))
    .map(([from, to]) => [at[from] ?? 0, at[to] ?? text.length] as const);
}

function wholeWord(word: string): RegExp {
  const literal = word.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");
  return new RegExp(`(?<![\\p{L}\\p{N}])${literal}(?![\\p{L}\\p{N}])`, "gu");
}

/** Text without case, accents and hidden characters, and where each unit of it stood. */
function folded(text: string): { plain: string; at: number[] } {
  let plain = "";
  const at: number[] = [];
  let offset = 0;
  for (const character of text) {
    const bare = character.normalize("NFKD").replace(HIDDEN, "").toLowerCase();
    for (let unit = 0; unit < bare.length; unit += 1) at.push(offset);
    plain += bare;
    offset += character.length;
  }
  return { plain, at };
}

function spans(text: string, pattern: RegExp): (readonly [number, number])[] {
  return [...text.matchAll(pattern)].map((hit) => [hit.index, hit.index + hit[0].length] as const);
}

function guard(
  kind: Guard["kind"],
  sentence: number,
  where: readonly [number, number],
  fix: string,
): Guard {
  return { kind, sentence, where, fix };
}
